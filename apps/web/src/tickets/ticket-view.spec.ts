import type { DispatchStep } from '@archwright/contracts';
import { isOnlyHere, ticketsOf } from './ticket-view.js';

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
  startsAt: '2027-07-05T07:30:00Z',
  endsAt: '2027-07-05T11:00:00Z',
  handsOnMinutes: 150,
  state: 'ready',
  dueBackAt: '2027-07-07T13:00:00Z',
  slackMinutes: 2880,
  waitsFor: null,
  question: null,
  lateUntil: null,
  avoidMaterials: [],
  ...more,
});
const practice = {
  today: '2027-07-05',
  laboratories: [
    {
      id: 'l',
      name: 'Central',
      zone: 'Europe/London',
      workCentres: [{ id: 'w', code: 'set-up', name: 'Set-up', places: 2 }],
    },
  ],
};
const tickets = (...steps: DispatchStep[]) => ticketsOf(steps, practice, 'https://dentures.example');

it('says of a job its number, work, bench and due time by the laboratory’s clock, and where its page is', () => {
  expect(tickets(step({}))).toEqual([
    {
      id: 's',
      number: '26-0121',
      step: 'Set-up, both arches',
      job: '26-0121, Set-up, both arches',
      bench: 'Set-up, Bench 2',
      begins: 'Mon 5 Jul, 08:30',
      handsOn: '150 min',
      due: 'Wed 7 Jul, 14:00',
      avoid: [],
      address: 'https://dentures.example/bench/jobs/s',
    },
  ]);
});

it('names each material to avoid, and says when nothing is due because the visit is not booked', () => {
  const [ticket] = tickets(step({ avoidMaterials: ['nickel', 'another'], dueBackAt: null }));
  expect(ticket).toMatchObject({
    avoid: ['nickel', 'another material: ask the clinic which'],
    due: 'visit not booked',
  });
});

it('prints nothing for work that is over', () => {
  const over = (['finished', 'rejected', 'discarded'] as const).map((state) => step({ id: state, state }));
  expect(tickets(...over, step({ id: 'begun', state: 'started' })).map(({ id }) => id)).toEqual(['begun']);
});

it.each([
  ['localhost', true],
  ['127.0.0.1', true],
  ['[::1]', true],
  ['dentures.example', false],
  ['192.168.1.20', false],
])('knows whether a phone can open %s', (hostname, onlyHere) => {
  expect(isOnlyHere(hostname)).toBe(onlyHere);
});
