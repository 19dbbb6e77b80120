import { jest } from '@jest/globals';
import { offersConflict } from '@archwright/contracts';
import { Appointment } from '@archwright/records';
import { RefusedCall } from '../../apps/cli/src/demo/api-session.js';
import {
  askOffers,
  confirmOf,
  found,
  holdOf,
  openBookingPractice,
  openCaseOf,
  overlaps,
  type BookingPractice,
} from './booking-practice.js';

const PEOPLE = 20;

/** Each offer is an exact search over four months. */
jest.setTimeout(120_000);

let practice: BookingPractice;
beforeAll(async () => {
  practice = await openBookingPractice();
});
afterAll(() => practice.close());

describe('twenty people who want the same times', () => {
  it('book nothing twice: one gets them, each other one is told so with fresh offers', async () => {
    const wanted = [];
    for (let person = 0; person < PEOPLE; person++) {
      const opened = await openCaseOf(practice, { path: 'repair', clinics: 1 });
      const { offers } = await askOffers(practice, opened.id, { count: 1 });
      wanted.push({ caseId: opened.id, offer: found(offers[0]) });
    }
    const visits = new Set(wanted.map(({ offer }) => JSON.stringify(offer.plan.visits.map((visit) => visit.startsAt))));
    expect(visits.size).toBe(1);
    const outcomes = await Promise.allSettled(
      wanted.map(async ({ caseId, offer }) => confirmOf(practice, await holdOf(practice, caseId, offer))),
    );
    const refused = outcomes.flatMap((outcome) => (outcome.status === 'rejected' ? [outcome.reason as unknown] : []));
    expect(refused.every((reason) => reason instanceof RefusedCall && reason.status === 409)).toBe(true);
    for (const reason of refused)
      expect(offersConflict.safeParse((reason as RefusedCall).problem).error).toBeUndefined();
    const booked = outcomes.length - refused.length;
    expect(booked).toBe(1);
    expect(await overlaps(practice)).toBe(0);
    const perCase = found(wanted[0]).offer.plan.visits.length;
    expect(await practice.rows((tx) => tx.countBy(Appointment, { state: 'booked' }))).toBe(booked * perCase);
    expect(await practice.rows((tx) => tx.countBy(Appointment, { state: 'held' }))).toBe(0);
  });
});
