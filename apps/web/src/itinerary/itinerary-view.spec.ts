import type { CaseView, ItineraryView } from '@archwright/contracts';
import { itineraryRows } from './itinerary-view.js';

const visit: ItineraryView['visits'][number] = {
  appointmentId: 'a',
  startsAt: '2027-07-06T08:30:00Z',
  endsAt: '2027-07-06T09:00:00Z',
  zone: 'Europe/London',
  clinicName: 'North',
  clinicPhone: '+44 20 7946 0000',
  address: '1 Example Road',
  isProvisional: true,
};
const stage = (more: object) => ({ appointmentId: 'a', clinicianName: 'Dr Example', ...more });
const stages = [
  stage({ title: 'Upper trial' }),
  stage({ title: 'Lower trial' }),
  stage({ appointmentId: 'b', title: 'Placement' }),
];

it('says day and time on the clinic’s wall, and everything that the visit is for', () => {
  const known = { stages } as unknown as Pick<CaseView, 'stages'>;
  const [row] = itineraryRows({ way: 'mail', visits: [visit] }, known, { today: '2027-07-01', viewer: 'Asia/Tokyo' });
  expect(row).toMatchObject({
    day: 'Tuesday 6 July',
    time: '09:30',
    zoneNote: 'London time',
    title: 'Upper trial, Lower trial',
    clinician: 'Dr Example',
    isProvisional: true,
  });
});
