import type { PracticeRules } from '@archwright/contracts';
import { draftOfRules, readRules } from './rules-draft.js';

const rules: PracticeRules = {
  mailLeadMinutes: [2880, 240],
  phoneLeadMinutes: [],
  quietHours: { from: '20:00', to: '08:00' },
  phoneHoldMinutes: 15,
  provisionalHoldMinutes: 2880,
  recallMonths: null,
  valuesPerFalseAlarm: 1000,
  ownLines: { en: 'Ring the side door.', de: '', ar: '' },
};

it('shows hours where people think in hours, and gives the same rules back', () => {
  const draft = draftOfRules(rules);
  expect(draft).toMatchObject({ mail: '48, 4', phone: '', provisionalHoldHours: '48', recallMonths: '' });
  expect(readRules(draft)).toEqual({ body: rules });
});

it('reads hours parted by the comma of an Arabic keyboard', () => {
  expect(readRules({ ...draftOfRules(rules), mail: '48، 4' })).toEqual({ body: rules });
});

it('reads hours parted by semicolons, with a comma in them', () => {
  const reading = readRules({ ...draftOfRules(rules), mail: '48; 1,5;', phone: '24;2' });
  expect(reading).toMatchObject({ body: { mailLeadMinutes: [2880, 90], phoneLeadMinutes: [1440, 120] } });
});

it.each([
  [{ mail: '48; 48' }, 'mail'],
  [{ mail: '48; 4, 2' }, 'mail'],
  [{ mail: '48, 48' }, 'mail'],
  [{ mail: 'two days' }, 'mail'],
  [{ phone: '0.1' }, 'phone'],
  [{ quietFrom: '' }, 'quietFrom'],
  [{ phoneHoldMinutes: '' }, 'phoneHoldMinutes'],
  [{ provisionalHoldHours: '0' }, 'provisionalHoldHours'],
  [{ recallMonths: '1.5' }, 'recallMonths'],
  [{ valuesPerFalseAlarm: '3' }, 'valuesPerFalseAlarm'],
  [{ de: 'x'.repeat(301) }, 'de'],
] as const)('refuses %j at its field', (typed, field) => {
  const reading = readRules({ ...draftOfRules(rules), ...typed });
  expect('errors' in reading ? Object.keys(reading.errors) : []).toEqual([field]);
});
