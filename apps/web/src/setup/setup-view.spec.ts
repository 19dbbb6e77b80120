import type { SetupEntry, SetupView } from '@archwright/contracts';
import { emptyDraft, readDraft } from './record-draft.js';
import {
  closableParts,
  closedKindOf,
  kindOfSearch,
  optionsOf,
  otherChange,
  previewView,
  setupGroups,
  setupSentence,
  zoneOfDraft,
} from './setup-view.js';

const ID = (n: number): string => `00000000-0000-4000-8000-00000000000${String(n)}`;
const hours = { startOn: '2027-01-04', startsLocal: '09:00', rrule: 'FREQ=DAILY', exceptLocal: [], minutes: 60 };
const clinic: SetupEntry = {
  id: ID(1),
  version: 1,
  isRetired: false,
  record: { kind: 'clinic', name: 'North', zone: 'Europe/Berlin', address: 'A', phone: null, hours: [hours, hours] },
};
const chair: SetupEntry = {
  id: ID(2),
  version: 4,
  isRetired: true,
  record: { kind: 'chair', clinicId: ID(1), label: 'Chair 1', wheelchairRoom: false },
};
const closure: SetupEntry = {
  id: ID(3),
  version: 1,
  isRetired: false,
  record: {
    kind: 'closure',
    of: { kind: 'resource', id: ID(2) },
    fromOn: '2027-02-01',
    lastOn: '2027-02-01',
    fromLocal: '12:00',
    untilLocal: '13:00',
    reason: 'Repair',
  },
};
const setup: SetupView = {
  today: '2027-01-04',
  entries: [clinic, chair, closure],
  benchPlaces: [{ id: ID(4), label: 'Wax 2', isRetired: false }],
  asked: { skills: [], kits: [], workCentres: [] },
};

it('shows each part with where it is and when it is open, the same hours once', () => {
  const rows = new Map(setupGroups(setup).map(({ kind, rows }) => [kind, rows]));
  expect(rows.get('clinic')).toMatchObject([{ name: 'North', hours: ['Every day, 09:00 to 10:00'] }]);
  expect(rows.get('chair')).toMatchObject([{ name: 'Chair 1', place: 'North', isRetired: true }]);
  expect(rows.get('closure')).toMatchObject([{ place: 'Chair 1', hours: ['Mon 1 Feb, 12:00 to 13:00'] }]);
  expect(setupSentence(setup)).toMatch(/^1 clinic and 0 people; 1 part is out of use\./);
});

it('names a bench place that is closed by itself', () => {
  const ofPlace = { ...closure, record: { ...closure.record, of: { kind: 'resource', id: ID(4) } } } as SetupEntry;
  const rows = setupGroups({ ...setup, entries: [ofPlace] }).find(({ kind }) => kind === 'closure')?.rows;
  expect(rows).toMatchObject([{ name: 'Repair', place: 'Wax 2' }]);
  expect(closableParts(setup)).toContainEqual({ value: ID(4), label: 'Wax 2' });
  expect([ID(1), ID(2), ID(4), ''].map((id) => closedKindOf(setup, id))).toEqual([
    'clinic',
    'resource',
    'resource',
    'clinic',
  ]);
});

it('offers to build only on what is in use', () => {
  expect(optionsOf(setup, ['clinic', 'chair'])).toEqual([{ value: ID(1), label: 'North' }]);
});

it('begins a new part where there is only one place for it, and says what is still missing', () => {
  const draft = emptyDraft('chair', setup);
  expect(draft).toMatchObject({ clinicId: ID(1), label: '' });
  expect(readDraft(draft)).toEqual({ errors: { label: 'Accepted: a name.' } });
  expect(readDraft({ ...draft, label: 'Chair 2' })).toMatchObject({ record: { label: 'Chair 2' } });
  expect(zoneOfDraft(setup, draft)).toBe('Europe/Berlin');
});

it('takes out of use what can come back, removes a closure, and leaves alone what others stand on', () => {
  expect([clinic, chair, closure].map(otherChange)).toEqual([
    null,
    { do: 'return', id: ID(2) },
    { do: 'drop', id: ID(3) },
  ]);
  expect(kindOfSearch('nonsense')).toBe('clinic');
});

it('says what a change would do, by the clock of the place', () => {
  const visit = {
    kind: 'visit' as const,
    caseId: ID(9),
    caseNumber: '27-0001',
    appointmentId: ID(8),
    patientName: 'Ada Example',
    startsAt: '2027-02-01T09:00:00Z',
    endsAt: '2027-02-01T09:30:00Z',
    zone: 'Europe/Berlin',
    why: 'North is closed then.',
  };
  const { sentence, rows } = previewView({ looked: 7, stranded: [visit], settled: 0 }, '2027-01-04');
  expect(sentence).toContain('1 booked time of 7 would have no place');
  expect(rows).toMatchObject([{ when: 'Mon 1 Feb, 10:00', who: '27-0001 · Ada Example' }]);
  expect(previewView({ looked: 0, stranded: [], settled: 2 }, '2027-01-04').rows).toEqual([]);
});
