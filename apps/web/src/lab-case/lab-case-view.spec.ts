import type { LabCaseView } from '@archwright/contracts';
import { orderSheets, pathWords, progressSentence, workRows } from './lab-case-view.js';

type Step = LabCaseView['labSteps'][number];
type Visit = LabCaseView['stages'][number];

const visit = (more: Partial<Visit>): Visit => ({
  id: 'v',
  code: 'D1',
  title: 'Examination',
  position: 1,
  round: 1,
  arches: ['upper', 'lower'],
  state: 'planned',
  isDelivery: false,
  isReview: false,
  appointmentId: null,
  appointmentState: 'booked',
  startsAt: '2027-01-04T09:00:00Z',
  endsAt: '2027-01-04T10:00:00Z',
  clinicName: 'North clinic',
  clinicianName: 'Dr Example',
  ...more,
});

const step = (more: Partial<Step>): Step => ({
  id: 's',
  code: 'pour',
  title: 'Pour the casts',
  arches: ['upper', 'lower'],
  round: 1,
  afterStage: 'D1',
  beforeStage: 'D2',
  workCentre: 'cast-room',
  state: 'planned',
  placeLabel: 'Cast room 1',
  startsAt: '2027-01-05T08:00:00Z',
  endsAt: '2027-01-05T09:00:00Z',
  laboratoryId: 'lab',
  workCentreId: 'casts',
  handsOnMinutes: 60,
  dueBackAt: '2027-01-07T14:00:00Z',
  waitsFor: null,
  stateReason: null,
  question: null,
  ...more,
});

const view = (more: Partial<LabCaseView>): LabCaseView => ({
  id: 'c',
  version: 1,
  number: '27-0001',
  state: 'open',
  title: 'Complete dentures, both arches',
  arches: [
    { arch: 'upper', pathVersionId: 'p', pathTitle: 'Conventional' },
    { arch: 'lower', pathVersionId: 'p', pathTitle: 'Conventional' },
  ],
  zone: 'Europe/London',
  deliveryOn: null,
  stages: [visit({}), visit({ id: 'w', code: 'D2', title: 'Trial', position: 2 })],
  labSteps: [step({})],
  transports: [],
  workOrders: [],
  ...more,
});

it('puts the work between the visits that it stands between, and leads to its list', () => {
  const rows = workRows(view({}), '2027-01-04');
  expect(rows.map(({ what }) => what)).toEqual(['Examination', 'Pour the casts', 'Trial']);
  expect(rows[1]).toMatchObject({
    when: 'Tue 5 Jan, 08:00',
    due: 'Thu 7 Jan, 14:00',
    list: { lab: 'lab', centre: 'casts', on: '2027-01-05' },
  });
});

it('shows work of a second go after the second visit, and leaves away what was discarded or dropped', () => {
  const rows = workRows(
    view({
      stages: [
        visit({ state: 'repeated' }),
        visit({ id: 'again', round: 2, position: 1 }),
        visit({ id: 'gone', code: 'D9', state: 'dropped' }),
      ],
      labSteps: [step({ id: 'old', state: 'discarded' }), step({ id: 'new', round: 2 })],
    }),
    '2027-01-04',
  );
  expect(rows.map(({ key }) => key)).toEqual(['v', 'again', 'new']);
  expect(rows[2]?.detail).toBe('both arches, 60 min hands-on, 2. time');
});

it('has no list for a step that is not planned, and gives the reason of one that was rejected', () => {
  const unplanned = { laboratoryId: null, workCentreId: null, startsAt: null, dueBackAt: null };
  const [, first, second] = workRows(
    view({
      labSteps: [step({ ...unplanned }), step({ id: 't', state: 'rejected', stateReason: 'The impression is torn.' })],
    }),
    '2027-01-04',
  );
  expect(first).toMatchObject({ list: null, when: 'not planned', due: '' });
  expect(second).toMatchObject({ mark: 'needs-person', note: 'Rejected: The impression is torn.' });
});

it('names one path once, two paths apart, and counts what is finished of what is made', () => {
  expect(pathWords(view({}))).toBe('both arches: Conventional');
  const reline = { arch: 'lower' as const, pathVersionId: 'r', pathTitle: 'Reline' };
  const [upper] = view({}).arches;
  expect(pathWords(view({ arches: [...(upper ? [upper] : []), reline] }))).toBe('upper: Conventional; lower: Reline');
  const labSteps = [step({ state: 'finished' }), step({}), step({ state: 'discarded' })];
  expect(progressSentence(view({ labSteps }))).toBe('2 laboratory steps, 1 finished.');
});

it('titles an order by stage, go and arches, with who signed it', () => {
  const order = {
    id: 'o',
    stage: 'D1',
    title: 'Examination',
    round: 2,
    arches: ['upper' as const],
    signedAt: '2027-01-04T10:00:00Z',
    signedBy: 'Dr Example',
    superseded: false,
    work: ['Pour the casts'],
    values: [{ name: 'Tooth shade', value: 'A2' }],
    objects: [],
  };
  expect(orderSheets(view({ workOrders: [order] }), '2027-01-04')).toMatchObject([
    { title: 'Examination, 2. time, upper', signed: 'Signed by Dr Example, Mon 4 Jan, 10:00' },
  ]);
});
