import type { CaseView, ReminderView } from '@archwright/contracts';
import { caseRows, deliverySentence, reminderRows, latestByOthers } from './case-page-view.js';

const stage = (more: Partial<CaseView['stages'][number]>): CaseView['stages'][number] => ({
  id: 's',
  code: 'D1',
  title: 'First impressions',
  position: 1,
  round: 1,
  arches: ['upper', 'lower'],
  state: 'planned',
  isDelivery: false,
  isReview: false,
  appointmentId: 'a1',
  appointmentState: 'booked',
  startsAt: '2027-01-05T09:00:00Z',
  endsAt: '2027-01-05T09:45:00Z',
  clinicName: 'North',
  clinicianName: 'Wren',
  ...more,
});
const step = (more: Partial<CaseView['labSteps'][number]>): CaseView['labSteps'][number] => ({
  id: 'l',
  code: 'print',
  title: 'Print',
  arches: ['upper'],
  round: 1,
  afterStage: 'D1',
  beforeStage: 'D2',
  workCentre: 'printing',
  stateReason: null,
  state: 'planned',
  placeLabel: 'Printer 1',
  startsAt: '2027-01-06T09:00:00Z',
  endsAt: '2027-01-06T12:00:00Z',
  ...more,
});
const view = (more: Partial<CaseView>): CaseView => ({
  id: 'c',
  version: 1,
  number: '26-0147',
  state: 'open',
  stateReason: null,
  reviewOn: null,
  title: '',
  sentence: '',
  told: { code: 'case-closed', values: {} },
  parentCase: null,
  followingCases: [],
  patient: { id: 'p', name: 'A. Example', birthOn: '1949-03-04', phone: null },
  arches: [],
  clinicIds: [],
  zone: 'Europe/London',
  clinicianId: null,
  wishes: { weekdays: [], from: null, to: null, unavailableOn: [] },
  visitPlace: { place: 'clinic', travelMinutes: null },
  consentOn: null,
  treatmentApprovedOn: null,
  medicinesAskedOn: null,
  deliveryOn: null,
  plannable: false,
  hold: null,
  stages: [],
  labSteps: [],
  transports: [],
  alerts: [],
  events: [],
  ...more,
});
const clock = { today: '2027-01-01', viewer: 'Europe/London' };

it('puts laboratory steps below the stage they follow, in order of time', () => {
  const rows = caseRows(
    view({
      stages: [stage({ id: 's2', code: 'D2', position: 2 }), stage({ id: 's1' })],
      labSteps: [step({ id: 'l2', startsAt: '2027-01-07T09:00:00Z' }), step({ id: 'l1' })],
    }),
    clock,
  );
  expect(rows.map((row) => row.key)).toEqual(['s1', 'l1', 'l2', 's2']);
});

it('puts work that waited for a repetition below the repetition, and loses none', () => {
  const rows = caseRows(
    view({
      stages: [
        stage({ id: 'first', state: 'repeated' }),
        stage({ id: 'second', round: 2, startsAt: '2027-01-12T09:00:00Z' }),
      ],
      labSteps: [
        step({ id: 'done', state: 'finished' }),
        step({ id: 'waited', startsAt: '2027-01-13T09:00:00Z' }),
        step({ id: 'unplanned', round: 3, startsAt: null, endsAt: null }),
      ],
    }),
    clock,
  );
  expect(rows.map((row) => row.key)).toEqual(['first', 'done', 'second', 'waited', 'unplanned']);
});

it('marks the stage an undecided alert is about, and no other', () => {
  const alerts = [{ id: 'x', stage: 'D1', reason: '', state: 'open' }];
  const rows = caseRows(view({ stages: [stage({}), stage({ id: 's2', code: 'D2', position: 2 })], alerts }), clock);
  expect(rows.map((row) => row.mark)).toEqual(['needs-person', 'to-come']);
  expect(
    caseRows(
      view({ stages: [stage({})], alerts: [{ id: 'x', stage: 'D1', reason: '', state: 'dismissed' }] }),
      clock,
    )[0]?.mark,
  ).toBe('to-come');
});

it('lets booked and provisional visits be changed, and missed ones be planned anew', () => {
  const row = (appointmentState: CaseView['stages'][number]['appointmentState']) =>
    caseRows(view({ stages: [stage({ appointmentState })] }), clock)[0];
  expect(row('booked')?.change).toEqual({ appointmentId: 'a1', words: 'Move or cancel' });
  expect(row('provisional')?.change).toEqual({ appointmentId: 'a1', words: 'Move or cancel' });
  expect(row('completed')?.change).toBeNull();
  expect(row('missed')).toMatchObject({ change: { appointmentId: 'a1', words: 'Plan anew' }, mark: 'missed' });
});

it('writes out the delivery day and says when a visit is not planned', () => {
  expect(deliverySentence(view({ deliveryOn: '2027-01-28' }), '2026-12-01')).toBe('Placement Thursday 28 January 2027');
  expect(caseRows(view({ stages: [stage({ startsAt: null, endsAt: null })] }), clock)[0]?.when).toBe('not planned');
});

it('lists reminders that failed first, then those to come as they fall due, and names their visits', () => {
  const reminder = (id: string, dueAt: string, state: ReminderView['state']): ReminderView => ({
    id,
    appointmentId: 'a1',
    zone: 'Europe/London',
    channel: 'mail',
    leadMinutes: 60,
    dueAt,
    state,
    sentAt: null,
  });
  const rows = reminderRows(
    [
      reminder('w', '2027-01-02T09:00:00Z', 'withdrawn'),
      reminder('c', '2027-01-04T09:00:00Z', 'scheduled'),
      reminder('b', '2027-01-03T09:00:00Z', 'scheduled'),
      reminder('s', '2027-01-02T09:00:00Z', 'sent'),
      reminder('f', '2027-01-05T09:00:00Z', 'failed'),
    ],
    view({ stages: [stage({})] }),
    '2027-01-01',
  );
  expect(rows.map((row) => row.id)).toEqual(['f', 'b', 'c', 's', 'w']);
  expect(rows[1]).toMatchObject({ visit: 'First impressions', text: 'by mail, Sun 3 Jan, 09:00' });
});

it('names what somebody else did last, whatever the person at the screen and the service did after it', () => {
  const event = (by: string | null, sentence: string) => ({
    at: '2027-01-05T09:00:00Z',
    kind: 'x',
    sentence,
    told: { code: 'as-written' as const, values: { text: sentence } },
    by,
  });
  const known = view({ events: [event('Robin', 'Held.'), event('Ada', 'Booked.'), event(null, 'Sent.')] });
  expect(latestByOthers(known, 'Ada')).toBe('Robin: Held.');
  expect(latestByOthers(view({ events: [event(null, 'Sent.')] }), 'Ada')).toBeNull();
});
