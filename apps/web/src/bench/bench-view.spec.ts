import type { DispatchStep, DispatchView, LoadView } from '@archwright/contracts';
import { dayHeads, dispatchRows, loadClass, loadRows } from './bench-view.js';

it.each([
  [0, 120, 0],
  [23, 120, 0],
  [24, 120, 1],
  [95, 120, 3],
  [96, 120, 4],
  [120, 120, 4],
  [121, 120, 'over'],
  [0, 0, 'closed'],
  [10, 0, 'over'],
])('puts %i of %i minutes into class %s', (booked, open, expected) => {
  expect(loadClass(booked, open)).toBe(expected);
});

it('has a cell for every day on which anyone works, closed where a work centre does not, and leaves rest days out', () => {
  const load: LoadView = {
    laboratoryId: 'l',
    laboratoryName: 'Central',
    zone: 'Europe/London',
    sentence: '',
    told: { code: 'dispatch-empty', values: {} },
    days: ['2027-01-05', '2027-01-06', '2027-01-09'],
    workCentres: [
      {
        id: 'p',
        code: 'printing',
        name: 'Printing',
        places: 2,
        days: [{ on: '2027-01-06', bookedMinutes: 700, openMinutes: 600 }],
      },
      {
        id: 'f',
        code: 'finishing',
        name: 'Finishing',
        places: 1,
        days: [
          { on: '2027-01-05', bookedMinutes: 0, openMinutes: 400 },
          { on: '2027-01-09', bookedMinutes: 0, openMinutes: 0 },
        ],
      },
    ],
    atRisk: [],
  };
  expect(loadRows(load)[0]?.cells.map((cell) => [cell.load, cell.label])).toEqual([
    ['closed', 'Printing, Tue 5 Jan: 0 of 0 minutes. Show the work'],
    ['over', 'Printing, Wed 6 Jan: 700 of 600 minutes. Show the work. 100 min over'],
  ]);
  expect(dayHeads(load).map((head) => head.label)).toEqual(['Tue 5 Jan', 'Wed 6 Jan']);
});

const step = (more: Partial<DispatchStep>): DispatchStep => ({
  id: 's',
  version: 1,
  caseId: 'c',
  caseNumber: '26-0121',
  code: 'set-up',
  title: 'Set-up',
  arches: ['upper', 'lower'],
  workCentreId: 'w',
  workCentre: 'Set-up',
  placeLabel: 'Bench 2',
  startsAt: '2027-01-05T08:30:00Z',
  endsAt: '2027-01-05T11:00:00Z',
  handsOnMinutes: 150,
  state: 'ready',
  dueBackAt: '2027-01-07T14:00:00Z',
  slackMinutes: 2880,
  waitsFor: null,
  question: null,
  lateUntil: null,
  avoidMaterials: [],
  ...more,
});
const view = (...steps: DispatchStep[]): DispatchView => ({
  laboratoryId: 'l',
  on: '2027-01-05',
  zone: 'Europe/London',
  sentence: '',
  told: { code: 'dispatch-empty', values: {} },
  order: '',
  steps,
});

const asked: NonNullable<DispatchStep['question']> = {
  id: 'q',
  question: 'Which shade?',
  askedAt: '2027-01-05T09:00:00Z',
  askedBy: 'Sam Bench-Example',
  escalatesAt: '2027-01-06T09:00:00Z',
  answer: null,
  answeredAt: null,
  answeredBy: null,
};

describe('dispatchRows', () => {
  const row = (more: Partial<DispatchStep>) => dispatchRows(view(step(more)), '2027-01-05')[0];

  it('keeps the order of the server and leads each step by the time that orders it', () => {
    const rows = dispatchRows(view(step({ id: 'later', startsAt: '2027-01-05T13:00:00Z' }), step({})), '2027-01-05');
    expect(rows.map(({ id }) => id)).toEqual(['later', 's']);
    expect(rows[1]).toMatchObject({
      title: 'Set-up, both arches',
      lead: { figure: '2 days', word: 'to spare', isLate: false },
      facts: ['planned 08:30', 'Set-up, Bench 2', '150 min hands-on', 'due back Thu 7 Jan, 14:00'],
    });
  });

  it('does not let work begin that waits for something, nor a finished step be touched', () => {
    expect(row({ waitsFor: 'the clinician' })?.actions).toEqual(['ask', 'reject', 'late']);
    expect(row({ state: 'finished' })?.actions).toEqual([]);
  });

  it('warns of materials that the patient is allergic to', () => {
    expect(row({ avoidMaterials: ['methacrylate', 'latex'] })?.avoid).toBe('do not use methacrylate, latex');
    expect(row({})?.avoid).toBeNull();
  });

  it('says how late a step is, and the day of one begun earlier', () => {
    const late = row({ slackMinutes: -90, startsAt: '2027-01-04T08:30:00Z' });
    expect(late?.lead).toEqual({ figure: '', word: '1.5 h late', isLate: true });
    expect(late?.facts[0]).toBe('planned Mon 4 Jan, 08:30');
  });

  it('stops the clock of a step while its question is open, and asks one at a time', () => {
    const open = row({ state: 'paused', waitsFor: 'The clinician', question: asked });
    expect(open).toMatchObject({
      lead: { figure: '', word: 'clock stopped' },
      mark: 'needs-person',
      actions: ['reject', 'late'],
    });
    const answered = { ...asked, answer: 'A2.', answeredAt: '2027-01-05T10:00:00Z', answeredBy: 'Dr Example' };
    expect(row({ state: 'paused', question: answered })?.actions).toEqual(['start', 'ask', 'reject', 'late']);
  });

  it('shows what was said of a delay until the clinic has decided, and does not let it be said twice', () => {
    expect(row({ lateUntil: '2027-01-06T15:00:00Z' })).toMatchObject({
      late: 'Said to be ready Wed 6 Jan, 15:00; the clinic decides.',
      actions: ['start', 'ask', 'reject'],
    });
    expect(row({})?.late).toBeNull();
  });

  it('names the bench once where its places carry its name', () => {
    expect(row({ placeLabel: 'Set-up 2' })?.facts[1]).toBe('Set-up 2');
  });
});
