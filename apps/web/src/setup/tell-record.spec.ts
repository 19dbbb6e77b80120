import type { SetupView } from '@archwright/contracts';
import { tellRecord } from './tell-record.js';

const id = '019b0000-0000-7000-8000-000000000001';
const setup = {
  entries: [{ id, isRetired: false, record: { kind: 'clinic', name: 'North clinic' } }],
  benchPlaces: [],
} as unknown as SetupView;
const textOf = (draft: Parameters<typeof tellRecord>[0], key: string) =>
  tellRecord(draft, setup).find((part) => part.key === key)?.text;

it('says a record field by field: names for ids, ticks and numbers as people say them', () => {
  const chair = { kind: 'chair', clinicId: id, label: 'Chair 1', wheelchairRoom: true } as const;
  expect(tellRecord(chair, setup).map(({ text }) => text)).toEqual(['North clinic', 'Chair 1', 'yes']);
  expect(textOf({ kind: 'kit', reprocessingMinutes: 45 }, 'reprocessingMinutes')).toBe('45');
});

it('says recurring times by their days and hours', () => {
  const hours = [{ rrule: 'FREQ=WEEKLY;BYDAY=MO,FR', from: '08:00', to: '17:00' }];
  expect(textOf({ kind: 'clinic', hours }, 'hours')).toMatch(/Monday and Friday.*08:00.*17:00/);
});

it('says nothing of what is not given', () => {
  expect(textOf({ kind: 'clinic', phone: null }, 'phone')).toBe('');
});
