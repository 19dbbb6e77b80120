import type { Ripple } from '@archwright/contracts';
import { lineBefore } from '../case-line/plan-view.js';
import { labChanges, visitChanges } from './ripple-view.js';

const ripple: Ripple = {
  id: 'r',
  planHash: 'h',
  caseId: 'c',
  visits: [
    {
      stages: ['D2'],
      title: 'Trial',
      appointmentId: 'a',
      patientName: 'A. Example',
      caseNumber: '26-0147',
      before: '2027-01-12T09:00:00Z',
      after: '2027-01-14T10:00:00Z',
      clinicName: 'North',
      zone: 'Europe/London',
    },
    {
      stages: ['D3'],
      title: 'Extra check',
      appointmentId: null,
      patientName: 'A. Example',
      caseNumber: '26-0147',
      before: null,
      after: '2027-01-20T10:00:00Z',
      clinicName: 'North',
      zone: 'Europe/London',
    },
  ],
  labSteps: [
    {
      code: 'set-up',
      title: 'Set-up',
      arches: ['upper', 'lower'],
      before: '2027-01-08T08:00:00Z',
      after: '2027-01-11T08:00:00Z',
    },
  ],
  calls: [],
  untouchedVisits: 1,
  plan: {
    visits: [
      ['2027-01-14T10:00:00Z', 'Trial'],
      ['2027-01-20T10:00:00Z', 'Extra check'],
      ['2027-01-28T09:00:00Z', 'Placement'],
    ].map(([startsAt = '', title = '']) => ({
      stages: ['D2'],
      title,
      clinicId: 'n',
      clinicName: 'North',
      zone: 'Europe/London',
      clinicianId: 'w',
      clinicianName: 'Wren',
      chairId: 'ch',
      chairLabel: 'Chair 1',
      homeTravelMinutes: null,
      startsAt,
      endsAt: startsAt.replace(':00:00Z', ':30:00Z'),
      isDelivery: false,
      isReview: false,
      asWished: true,
      againstWishes: [],
    })),
    labSteps: [],
    transports: [],
    deliveryOn: '2027-01-28',
    reasons: [],
    givesUp: [],
  },
};
const clock = { today: '2027-01-05', viewer: 'Europe/London' };

it('says before and after of every visit and step, and which are new', () => {
  expect(visitChanges(ripple, clock).map((row) => [row.before, row.after])).toEqual([
    ['Tue 12 Jan, 09:00', 'Thu 14 Jan, 10:00'],
    ['new', 'Wed 20 Jan, 10:00'],
  ]);
  expect(labChanges(ripple, 'Europe/London', clock)[0]).toMatchObject({
    detail: 'both arches',
    before: 'Fri 8 Jan, 08:00',
  });
});

it('draws before the change: moved visits where they were, new ones not at all, others where they stay', () => {
  expect(
    lineBefore(ripple, 'Europe/London').visits.map((visit) => [visit.title, new Date(visit.startMs).toISOString()]),
  ).toEqual([
    ['Trial', '2027-01-12T09:00:00.000Z'],
    ['Placement', '2027-01-28T09:00:00.000Z'],
  ]);
});
