import { jest } from '@jest/globals';
import { dayBoard, offersConflict, problem } from '@archwright/contracts';
import { expireHolds, serviceActor } from '@archwright/casework';
import { Appointment, Batch, LabStep, Occupancy, Reminder, Stage } from '@archwright/records';
import { In, IsNull, Not } from 'typeorm';
import { RefusedCall } from '../../apps/cli/src/demo/api-session.js';
import {
  NOW,
  askOffers,
  bookedCase,
  confirmOf,
  found,
  holdOf,
  openBookingPractice,
  openCaseOf,
  overlaps,
  releaseOf,
  type BookingPractice,
} from './booking-practice.js';

/** Each offer is an exact search over four months. */
jest.setTimeout(120_000);

let practice: BookingPractice;
beforeAll(async () => {
  practice = await openBookingPractice();
});
afterAll(() => practice.close());

const ofHold = (holdId: string) =>
  practice.rows((tx) => tx.findBy(Occupancy, { holdId }).then((taken) => taken.length));

async function refusalOf(work: Promise<unknown>): Promise<RefusedCall> {
  try {
    await work;
  } catch (error) {
    if (error instanceof RefusedCall) return error;
    throw error;
  }
  throw new Error('It was not refused.');
}

describe('a hold', () => {
  it('keeps everything the offer needs, for minutes, where everybody sees it', async () => {
    const opened = await openCaseOf(practice);
    const offer = found((await askOffers(practice, opened.id)).offers[0]);
    const hold = await holdOf(practice, opened.id, offer);
    expect(hold.planHash).toBe(offer.planHash);
    expect(hold.plan).toEqual(offer.plan);
    expect(Date.parse(hold.expiresAt) - NOW.getTime()).toBeGreaterThan(14 * 60_000);

    const first = found(offer.plan.visits[0]);
    const board = await practice.desk.call({
      method: 'GET',
      path: `/appointments?on=${first.startsAt.slice(0, 10)}`,
      answer: dayBoard,
    });
    expect(board.appointments).toContainEqual(
      expect.objectContaining({ caseId: opened.id, state: 'held', startsAt: first.startsAt, chairId: first.chairId }),
    );

    const other = await openCaseOf(practice);
    const others = (await askOffers(practice, other.id)).offers.flatMap(({ plan }) => plan.visits);
    const taken = offer.plan.visits.filter((visit) =>
      others.some(
        (each) =>
          (each.chairId === visit.chairId || each.clinicianId === visit.clinicianId) &&
          each.startsAt < visit.endsAt &&
          each.endsAt > visit.startsAt,
      ),
    );
    expect(taken).toEqual([]);
    await releaseOf(practice, hold);
  });

  it('gives everything back when it is released', async () => {
    const opened = await openCaseOf(practice);
    const { offers } = await askOffers(practice, opened.id);
    const hold = await holdOf(practice, opened.id, found(offers[0]));
    expect(await ofHold(hold.id)).toBeGreaterThan(20);
    await releaseOf(practice, hold);
    expect(await ofHold(hold.id)).toBe(0);
    await practice.rows(async (tx) => {
      const stages = await tx.findBy(Stage, { caseId: opened.id });
      expect(stages.every(({ state }) => state === 'waiting')).toBe(true);
      expect(await tx.countBy(LabStep, { caseId: opened.id, startsAt: Not(IsNull()) })).toBe(0);
    });
    expect((await askOffers(practice, opened.id)).offers[0]?.planHash).toBe(offers[0]?.planHash);
  });

  it('refuses to book another plan than the one that it keeps', async () => {
    const opened = await openCaseOf(practice);
    const { offers } = await askOffers(practice, opened.id);
    const hold = await holdOf(practice, opened.id, found(offers[0]));
    const other = await refusalOf(confirmOf(practice, hold, 'all', found(offers[1]).planHash));
    expect(other.status).toBe(409);
    await releaseOf(practice, hold);
  });
});

describe('a confirmed offer', () => {
  it('books exactly the plan that was shown', async () => {
    const opened = await openCaseOf(practice);
    const offer = found((await askOffers(practice, opened.id)).offers[0]);
    const booked = await confirmOf(practice, await holdOf(practice, opened.id, offer));
    expect(booked.stages.filter(({ appointmentState }) => appointmentState === 'booked')).toHaveLength(
      offer.plan.visits.length,
    );
    await practice.rows(async (tx) => {
      const ids = booked.stages.flatMap(({ appointmentId }) => appointmentId ?? []);
      const visits = await tx.find(Appointment, { where: { id: In(ids) }, order: { startsAt: 'ASC' } });
      expect(
        visits.map(({ startsAt, endsAt, chairId, clinicianId, clinicId }) => ({
          startsAt: startsAt.toISOString(),
          endsAt: endsAt.toISOString(),
          chairId,
          clinicianId,
          clinicId,
        })),
      ).toEqual(
        offer.plan.visits.map(({ startsAt, endsAt, chairId, clinicianId, clinicId }) => ({
          startsAt,
          endsAt,
          chairId,
          clinicianId,
          clinicId,
        })),
      );
      const steps = await tx.findBy(LabStep, { caseId: opened.id });
      const shown = offer.plan.labSteps.map((step) => `${step.code} ${step.startsAt} ${step.placeId ?? ''}`).sort();
      expect(
        steps.map((step) => `${step.code} ${step.startsAt?.toISOString() ?? ''} ${step.placeId ?? ''}`).sort(),
      ).toEqual(shown);
      expect(steps.every(({ state }) => state === 'planned')).toBe(true);
      // Two flasks in a curing cycle that other cases' work may join.
      const { batchId } = found(steps.find(({ code }) => code === 'cure'));
      expect(await tx.findOneBy(Batch, { id: found(batchId) })).toMatchObject({
        kind: 'curing-cycle',
        used: 2,
        size: 6,
      });
      expect(await tx.countBy(Reminder, { appointmentId: In(ids) })).toBeGreaterThan(0);
      expect(await tx.countBy(Occupancy, { appointmentId: In(ids), holdId: Not(IsNull()) })).toBe(0);
    });
    const again = await refusalOf(askOffers(practice, opened.id));
    expect(again.problem.code).toBe('casework.everything-booked');
  });

  it('makes the next visits firm and keeps the rest for a day or two', async () => {
    const opened = await openCaseOf(practice);
    const offer = found((await askOffers(practice, opened.id)).offers[0]);
    const hold = await holdOf(practice, opened.id, offer, { kind: 'provisional' });
    const partly = await confirmOf(practice, hold, 2);
    const states = partly.stages.flatMap(({ appointmentState }) => appointmentState ?? []);
    expect(states.filter((state) => state === 'booked')).toHaveLength(2);
    expect(states.filter((state) => state === 'provisional')).toHaveLength(offer.plan.visits.length - 2);
    const whole = await confirmOf(practice, hold, 'all');
    expect(whole.stages.filter(({ appointmentState }) => appointmentState === 'booked')).toHaveLength(
      offer.plan.visits.length,
    );
    expect(await overlaps(practice)).toBe(0);
  });
});

describe('an offer that somebody else took', () => {
  it('is refused with 409 and fresh offers that can be held', async () => {
    const one = await openCaseOf(practice);
    const two = await openCaseOf(practice);
    const first = found((await askOffers(practice, one.id)).offers[0]);
    const late = found((await askOffers(practice, two.id)).offers[0]);
    await confirmOf(practice, await holdOf(practice, one.id, first));
    const refusal = await refusalOf(holdOf(practice, two.id, late));
    expect(refusal.status).toBe(409);
    expect(problem.parse(refusal.problem).code).toBe('casework.offer-conflict');
    const fresh = offersConflict.parse(refusal.problem).offers;
    expect(fresh.caseId).toBe(two.id);
    const hold = await holdOf(practice, two.id, found(fresh.offers[0]));
    await confirmOf(practice, hold);
    expect(await overlaps(practice)).toBe(0);
  });
});

describe('a hold that runs out', () => {
  it('cannot be confirmed any more, gives its time to others, and is swept away', async () => {
    const opened = await openCaseOf(practice);
    const { offers } = await askOffers(practice, opened.id);
    const hold = await holdOf(practice, opened.id, found(offers[0]), { minutes: 1 });
    await practice.moveClock(new Date(Date.parse(hold.expiresAt) + 60_000));
    const refusal = await refusalOf(confirmOf(practice, hold));
    expect(refusal.status).toBe(409);
    expect(offersConflict.parse(refusal.problem).offers.offers.length).toBeGreaterThan(0);
    const other = await bookedCase(practice);
    expect(other.stages.some(({ appointmentState }) => appointmentState === 'booked')).toBe(true);
    const now = new Date(Date.parse(hold.expiresAt) + 120_000);
    const actor = serviceActor(practice.organisationId);
    const ended = await practice.rows((tx) => expireHolds(tx, actor, now));
    expect(ended).toBeGreaterThanOrEqual(1);
    expect(await practice.rows((tx) => expireHolds(tx, actor, now))).toBe(0);
    expect(await ofHold(hold.id)).toBe(0);
    expect(await practice.rows((tx) => tx.countBy(Appointment, { holdId: hold.id }))).toBe(0);
  });
});
