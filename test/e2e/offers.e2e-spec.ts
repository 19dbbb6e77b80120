import { jest } from '@jest/globals';
import type { OffersView } from '@archwright/contracts';
import { RefusedCall } from '../../apps/cli/src/demo/api-session.js';
import { askOffers, found, openBookingPractice, openCaseOf, type BookingPractice } from './booking-practice.js';

/** Each offer is an exact search over four months. */
jest.setTimeout(120_000);

let practice: BookingPractice;
beforeAll(async () => {
  practice = await openBookingPractice();
});
afterAll(() => practice.close());

const deliveryOf = ({ offers }: OffersView) => found(offers[0]).plan.deliveryOn;

describe('offers for a whole case', () => {
  it('are three complete plans that differ, each with its reasons and what it gives up', async () => {
    const opened = await openCaseOf(practice, { weekdays: [2, 4] });
    const { offers, whyNot } = await askOffers(practice, opened.id);
    expect(whyNot).toBeNull();
    expect(offers).toHaveLength(3);
    expect(new Set(offers.map(({ planHash }) => planHash)).size).toBe(3);
    expect(new Set(offers.map(({ label }) => label)).size).toBe(3);
    for (const { plan } of offers) {
      expect(plan.visits.flatMap(({ stages }) => stages)).toEqual(['V1', 'V2', 'V3', 'V4', 'V5', 'R1', 'R2']);
      expect(plan.labSteps.length).toBeGreaterThan(10);
      expect(plan.labSteps.every(({ placeLabel }) => placeLabel !== '')).toBe(true);
      expect(plan.reasons.length).toBeGreaterThan(0);
      expect(plan.deliveryOn).toBe(plan.visits.find(({ isDelivery }) => isDelivery)?.startsAt.slice(0, 10));
      expect(
        plan.visits.filter(({ asWished }) => !asWished).every(({ againstWishes }) => againstWishes.length > 0),
      ).toBe(true);
    }
    expect(offers[0]?.label).toBe('Earliest placement');
    expect(offers.some(({ plan }) => plan.visits.every(({ asWished }) => asWished))).toBe(true);
  });

  it('are the same when nothing has changed', async () => {
    const opened = await openCaseOf(practice);
    const before = await askOffers(practice, opened.id);
    const again = await askOffers(practice, opened.id);
    expect(again.offers.map(({ planHash }) => planHash)).toEqual(before.offers.map(({ planHash }) => planHash));
  });

  it('name the failing stage and relaxations that work when there is none', async () => {
    const winter = Array.from({ length: 200 }, (_, day) =>
      new Date(Date.parse('2027-01-04T12:00:00Z') + day * 86_400_000).toISOString().slice(0, 10),
    );
    const opened = await openCaseOf(practice, { unavailableOn: winter });
    const { offers, whyNot } = await askOffers(practice, opened.id);
    expect(offers).toEqual([]);
    expect(whyNot?.sentence).toContain('has no time left');
    const lifted = found(whyNot?.relaxations.find(({ code }) => code === 'unavailable-days'));
    const relaxed = await askOffers(practice, opened.id, { relax: found(lifted.apply ?? undefined) });
    expect(deliveryOf(relaxed)).toBe(lifted.deliveryOn);
  });

  it('keep every visit at the clinic within the time of whoever brings the patient, who can be done without', async () => {
    const opened = await openCaseOf(practice, { escort: { weekdays: [2, 4], from: '09:00', to: '12:30' } });
    const { offers } = await askOffers(practice, opened.id);
    expect(offers.length).toBeGreaterThan(0);
    // London keeps winter time until the last Sunday of March.
    for (const { startsAt, endsAt } of offers.flatMap(({ plan }) => plan.visits)) {
      expect([2, 4]).toContain(new Date(startsAt).getUTCDay());
      const isSummer = startsAt >= '2027-03-28';
      expect(startsAt.slice(11, 16) >= (isSummer ? '08:00' : '09:00')).toBe(true);
      expect(endsAt.slice(11, 16) <= (isSummer ? '11:30' : '12:30')).toBe(true);
    }
    const alone = await openCaseOf(practice, { escort: { weekdays: [7], from: '09:00', to: '12:30' } });
    const { offers: none, whyNot } = await askOffers(practice, alone.id);
    expect(none).toEqual([]);
    const lifted = found(whyNot?.relaxations.find(({ code }) => code === 'unavailable-days'));
    expect(lifted.changes[0]?.sentence).toContain('brought by somebody else');
  });

  it('are for the clinic: a laboratory is refused, an unknown case is not there', async () => {
    const opened = await openCaseOf(practice);
    const bench = await practice.signIn('bench');
    await expect(askOffers({ ...practice, desk: bench }, opened.id)).rejects.toMatchObject({ status: 403 });
    const unknown = askOffers(practice, '019b0000-0000-7000-8000-000000000000');
    await expect(unknown).rejects.toThrow(RefusedCall);
    await expect(unknown).rejects.toMatchObject({ status: 404 });
  });
});
