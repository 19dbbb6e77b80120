import { chosenDevices, kindsOf, withDevices } from './devices-view.js';

const devices = [
  { id: 'blue', name: 'Blue caliper', measures: 'lengths', isLastUsed: false },
  { id: 'red', name: 'Red caliper', measures: 'lengths', isLastUsed: true },
  { id: 'plates', name: 'Plates', measures: 'tracings', isLastUsed: true },
] as const;

it('offers what was last used at the chair, until somebody chooses', () => {
  expect(kindsOf(devices)).toEqual(['lengths', 'tracings']);
  expect(chosenDevices({ devices: [...devices] }, {})).toEqual({ lengths: 'red', tracings: 'plates' });
  expect(chosenDevices({ devices: [...devices] }, { lengths: '' })).toEqual({ lengths: '', tracings: 'plates' });
});

it('sends a device only with readings that it took', () => {
  const view = {
    fields: [
      { code: 'vertical-dimension-at-rest', kind: 'number', unit: 'mm' },
      { code: 'nasolabial-angle', kind: 'number', unit: 'deg' },
    ],
  } as const;
  const chosen = { lengths: 'red', tracings: 'plates' };
  const taken = (code: string, value: number, by: typeof chosen) => {
    const body = { readings: [{ code, value }], tracings: [], checklist: {}, otherCentricRelation: [] };
    return withDevices(view, body, by).deviceIds;
  };
  expect(taken('vertical-dimension-at-rest', 68, chosen)).toEqual(['red']);
  expect(taken('nasolabial-angle', 95, chosen)).toBeUndefined();
  expect(taken('vertical-dimension-at-rest', 68, { ...chosen, lengths: '' })).toBeUndefined();
});
