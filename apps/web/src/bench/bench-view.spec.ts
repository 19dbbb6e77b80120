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
  expect(loadRows(load)[0]?.cells.map((cell) => [cell.load, cell.overBy])).toEqual([
    ['closed', 0],
    ['over', 100],
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
  openQuestion: null,
  ...more,
});
const view = (...steps: DispatchStep[]): DispatchView => ({
  laboratoryId: 'l',
  on: '2027-01-05',
  zone: 'Europe/London',
  sentence: '',
  order: '',
  steps,
});

describe('dispatchRows', () => {
  it('keeps the order of the server and says when the work is due back', () => {
    const rows = dispatchRows(view(step({ id: 'later', startsAt: '2027-01-05T13:00:00Z' }), step({})), '2027-01-05');
    expect(rows.map((row) => row.id)).toEqual(['later', 's']);
    expect(rows[1]).toMatchObject({
      time: '08:30',
      due: 'due back Thu 7 Jan, 14:00',
      slack: '2 days to spare',
      isLate: false,
    });
  });

  it('does not let work begin that waits for something, nor a finished step be touched', () => {
    expect(dispatchRows(view(step({ waitsFor: 'the clinician' })), '2027-01-05')[0]?.actions).toEqual([
      'ask',
      'reject',
    ]);
    expect(dispatchRows(view(step({ state: 'finished' })), '2027-01-05')[0]?.actions).toEqual([]);
  });

  it('says how late a step is, and the day of one begun earlier', () => {
    const row = dispatchRows(view(step({ slackMinutes: -90, startsAt: '2027-01-04T08:30:00Z' })), '2027-01-05')[0];
    expect(row).toMatchObject({ slack: '1.5 h late', isLate: true, time: 'Mon 4 Jan, 08:30' });
  });
});
