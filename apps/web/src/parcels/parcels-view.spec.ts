import type { ObjectView, ParcelView } from '@archwright/contracts';
import { deedBody, objectRows, parcelRows, readFindings } from './parcels-view.js';

const caution = { text: 'A declaration is not a proof.', source: 'common practice, no source' };
const parcel = (more: Partial<ParcelView>): ParcelView => ({
  id: 'p',
  version: 1,
  direction: 'to-lab',
  state: 'packed',
  clinicId: 'north',
  clinicName: 'North clinic',
  laboratoryId: 'lab',
  laboratoryName: 'Lantern',
  courierLegId: null,
  carrier: null,
  packedAt: '2027-01-04T09:00:00Z',
  packedBy: 'Robin Example',
  handedOverAt: null,
  receivedAt: null,
  reconciledAt: null,
  sentence: '1 object packed.',
  objects: [],
  caution,
  ...more,
});
const desk = { role: 'front-desk' as const, clinicIds: ['north'], laboratoryIds: [] };
const bench = { role: 'lab' as const, clinicIds: [], laboratoryIds: ['lab'] };
const manager = { role: 'manager' as const, clinicIds: ['north'], laboratoryIds: ['lab'] };

describe('whose turn a parcel is', () => {
  it.each([
    ['packed', 'to-lab', 'send', null],
    ['handed-over', 'to-lab', null, 'receive'],
    ['received', 'to-lab', null, 'check'],
    ['packed', 'to-clinic', null, 'send'],
    ['handed-over', 'to-clinic', 'receive', null],
    ['received', 'to-clinic', 'check', null],
  ] as const)('%s %s: at the desk %s, at the bench %s, never the manager', (state, direction, atDesk, atBench) => {
    const turn = (viewer: Parameters<typeof parcelRows>[1]) =>
      parcelRows([parcel({ state, direction })], viewer)[0]?.turn;
    expect([turn(desk), turn(bench), turn(manager)]).toEqual([atDesk, atBench, null]);
    expect(turn({ ...desk, clinicIds: ['east'] })).toBeNull();
  });

  it('puts on top what is to be checked, then what is to be received', () => {
    const rows = parcelRows(
      [parcel({ id: 'a' }), parcel({ id: 'b', state: 'handed-over' }), parcel({ id: 'c', state: 'received' })],
      bench,
    );
    expect(rows.map(({ id }) => id)).toEqual(['c', 'b', 'a']);
  });
});

const object = (more: Partial<ObjectView>): ObjectView => ({
  id: 'o',
  version: 1,
  caseId: 'c',
  caseNumber: '27-0001',
  code: '27-0001-impression-upper-1',
  kind: 'impression',
  arch: 'upper',
  round: 1,
  state: 'in-use',
  stateReason: null,
  holder: 'clinic',
  clinicId: 'north',
  laboratoryId: null,
  place: null,
  useBy: null,
  disinfection: null,
  notToBeUsed: null,
  notToBePacked: 'No disinfection of it is declared since it came here',
  caution,
  ...more,
});
const CLOCK = { zone: 'Europe/London', today: '2027-01-04' };
const CLINICS = [
  { id: 'north', name: 'North clinic' },
  { id: 'east', name: 'East clinic' },
];

it('shows what is in hand here, and offers of each what its state allows', () => {
  const elsewhere = object({ id: 'x', holder: 'laboratory', laboratoryId: 'lab', clinicId: null });
  const rows = objectRows([object({}), elsewhere], desk, CLOCK, CLINICS);
  expect(rows.map(({ id }) => id)).toEqual(['o']);
  expect(rows[0]?.against).toContain('No disinfection');
  expect(rows[0]?.deeds.map(({ key }) => key)).toEqual([
    'quarantine',
    'give-to-patient',
    'declare-lost',
    'discard',
    'forward east',
  ]);
  const atBench = objectRows([elsewhere], bench, CLOCK, CLINICS)[0];
  expect(atBench?.deeds.map(({ key }) => key)).toEqual(['quarantine', 'declare-lost', 'discard']);
  expect(objectRows([object({ state: 'quarantined' })], manager, CLOCK, CLINICS)[0]?.deeds).toEqual([]);
});

it('sends a reason with what needs one, and a clinic with what is forwarded', () => {
  expect(deedBody('release', 'Looked at')).toEqual({ action: 'release', reason: 'Looked at' });
  expect(deedBody('give-to-patient', '')).toEqual({ action: 'give-to-patient' });
  expect(deedBody('forward east', '')).toEqual({ action: 'forward', clinicId: 'east' });
});

it('wants a finding for every object of a parcel', () => {
  const draft = { caseNumber: '27-0001', code: 'a', found: 'damaged', place: ' B4 ', note: '' };
  expect(readFindings([draft, { ...draft, code: 'b', found: '' }])).toEqual({ missing: [1] });
  expect(readFindings([draft])).toEqual({
    body: { findings: [{ caseNumber: '27-0001', code: 'a', found: 'damaged', place: 'B4' }] },
  });
});
