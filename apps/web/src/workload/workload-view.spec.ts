import type { WorkloadRunView } from '@archwright/contracts';
import { isUnderWay, proposalCards } from './workload-view.js';

const run: WorkloadRunView = {
  id: 'r',
  version: 3,
  laboratoryId: 'l',
  state: 'finished',
  sentence: '1 proposal.',
  askedAt: '2027-01-05T08:00:00Z',
  seed: 1,
  weeks: 3,
  epochs: 12,
  late: [],
  proposals: [
    {
      id: 'p',
      version: 1,
      kind: 'overtime',
      state: 'open',
      title: 'Work overtime',
      sentence: '',
      certainty: '',
      before: { lateCases: 2, lateMinutes: 300, fullDays: 4 },
      after: { lateCases: 0, lateMinutes: 0, fullDays: 3 },
      moves: [
        {
          caseId: 'c',
          caseNumber: '27-0001',
          title: 'Set-up',
          workCentre: 'Tooth set-up',
          laboratory: null,
          fromAt: '2027-01-06T09:00:00Z',
          toAt: '2027-01-05T16:00:00Z',
        },
      ],
      visits: [
        {
          caseId: 'c',
          caseNumber: '27-0001',
          title: 'Try-in',
          clinicName: 'North',
          zone: 'Europe/Berlin',
          fromAt: '2027-01-07T09:00:00Z',
          toAt: '2027-01-08T13:00:00Z',
        },
      ],
      days: [
        {
          workCentreId: 's',
          workCentre: 'Tooth set-up',
          on: '2027-01-06',
          beforeMinutes: 500,
          afterMinutes: 350,
          openMinutes: 540,
        },
        {
          workCentreId: 's',
          workCentre: 'Tooth set-up',
          on: '2027-01-05',
          beforeMinutes: 480,
          afterMinutes: 630,
          openMinutes: 540,
        },
        {
          workCentreId: 'w',
          workCentre: 'Wax',
          on: '2027-01-05',
          beforeMinutes: 0,
          afterMinutes: 45,
          openMinutes: 540,
        },
      ],
      overtime: [{ workCentre: 'Tooth set-up', on: '2027-01-05', minutes: 90 }],
    },
  ],
};

describe('the card of a proposal', () => {
  const [card] = proposalCards(run, 'Europe/London', '2027-01-05');

  it('puts what is now beside what would be', () => {
    expect(card?.effects.map(({ now, then }) => [now, then])).toEqual([
      [2, 0],
      [300, 0],
      [4, 3],
    ]);
    expect(card?.moves[0]?.when).toMatch(/09:00 → .*16:00/);
    expect(card?.visits).toMatchObject([{ what: 'Try-in, North' }]);
    expect(card?.visits[0]?.when).toMatch(/10:00 → .*14:00/);
    expect(card?.overtime).toEqual(['Tooth set-up, Tue 5 Jan: 90 min']);
    expect(card?.decided).toBeNull();
  });

  it('shows the changed days in their order, by the load that they would have', () => {
    expect(card?.days.heads.map(({ label }) => label)).toEqual(['Tue 5 Jan', 'Wed 6 Jan']);
    expect(card?.days.rows.map(({ cells }) => cells.map(({ load, text }) => [load, text]))).toEqual([
      [
        ['over', '480 → 630'],
        [3, '500 → 350'],
      ],
      [
        [0, '0 → 45'],
        [null, ''],
      ],
    ]);
  });
});

it('is watched while it is under way only', () => {
  expect(
    [null, run, { ...run, state: 'asked' as const }, { ...run, state: 'running' as const }].map(isUnderWay),
  ).toEqual([false, false, true, true]);
});
