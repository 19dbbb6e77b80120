import { jest } from '@jest/globals';
import { appointmentView, caseView, freedTimeView, ripple, type AppointmentView } from '@archwright/contracts';
import { bookedCase, found, openBookingPractice, type BookingPractice } from './booking-practice.js';
import { refusal } from './capture-chairside.js';

jest.setTimeout(180_000);

describe('time that has become free', () => {
  let practice: BookingPractice;
  let waiting: string;
  let given: AppointmentView;

  beforeAll(async () => {
    practice = await openBookingPractice();
    const first = await bookedCase(practice, { clinics: 1 });
    const visit = found(first.stages.find(({ appointmentId }) => appointmentId !== null));
    given = await practice.desk.call({
      method: 'GET',
      path: `/appointments/${found(visit.appointmentId)}`,
      answer: appointmentView,
    });
    waiting = (await bookedCase(practice, { clinics: 1, clinicianId: given.clinicianId })).id;
  });
  afterAll(() => practice.close());

  const asked = ({ clinicId, clinicianId, startsAt, endsAt }: AppointmentView) =>
    practice.desk.call({
      method: 'GET',
      path: `/freed-time?${new URLSearchParams({ clinicId, clinicianId, startsAt, endsAt }).toString()}`,
      answer: freedTimeView,
    });

  it('names nobody while the time is taken', async () => {
    const { takers, casesLookedAt } = await asked(given);
    expect(takers).toEqual([]);
    expect(casesLookedAt).toBeGreaterThan(0);
  });

  it('names the case that gains by it, and moving its visit there keeps the promise', async () => {
    const preview = await practice.desk.call({
      method: 'POST',
      path: '/ripples/cancel',
      body: { appointmentId: given.id, reason: 'Cannot come.', then: 'drop-rest' },
      answer: ripple,
    });
    await practice.desk.call({
      method: 'POST',
      path: `/ripples/${preview.id}/apply`,
      body: { planHash: preview.planHash },
      answer: caseView,
    });

    const { takers } = await asked(given);
    const taker = found(takers[0]);
    expect(taker.caseId).toBe(waiting);
    expect(Date.parse(taker.startsAt)).toBeGreaterThanOrEqual(Date.parse(given.startsAt));
    expect(Date.parse(taker.endsAt)).toBeLessThanOrEqual(Date.parse(given.endsAt));
    expect(Date.parse(taker.startsAt)).toBeLessThan(Date.parse(taker.before));

    const { appointmentId, startsAt } = taker;
    const moved = await practice.desk.call({
      method: 'POST',
      path: '/ripples/move',
      body: { appointmentId, startsAt, clinicianId: given.clinicianId, aim: 'earliest' },
      answer: ripple,
    });
    expect(moved.plan.deliveryOn).toBe(taker.deliveryOn);
    expect(moved.visits).toHaveLength(taker.movedVisits);
  });

  it('refuses time that is past, and a person who does not treat in the clinic', async () => {
    const past = { ...given, startsAt: '2026-12-01T10:00:00Z', endsAt: '2026-12-01T11:00:00Z' };
    expect((await refusal(asked(past))).status).toBe(400);
    const stranger = found(practice.practice.clinics.at(-1)).id;
    expect((await refusal(asked({ ...given, clinicianId: stranger }))).status).toBe(404);
  });
});
