import { jest } from '@jest/globals';
import { offersView, practiceView } from '@archwright/contracts';
import { askOffers, openBookingPractice, openCaseOf, type BookingPractice } from './booking-practice.js';

jest.setTimeout(120_000);

let practice: BookingPractice;
beforeAll(async () => {
  practice = await openBookingPractice();
});
afterAll(() => practice.close());

describe('a search for offers', () => {
  it('lets the service answer others: a request sent after it began is answered before it ends', async () => {
    const { id } = await openCaseOf(practice);
    const order: string[] = [];
    const { searches, desk } = practice;
    const search = searches.offers.bind(searches);
    const watched = jest.spyOn(searches, 'offers').mockImplementation(async (...asked) => {
      // In the event loop of the service the search would be over before this request is even sent.
      const [answer] = await Promise.all([
        search(...asked).finally(() => order.push('search')),
        desk.call({ method: 'GET', path: '/practice', answer: practiceView }).finally(() => order.push('request')),
      ]);
      return answer;
    });
    const { offers } = await askOffers(practice, id);
    watched.mockRestore();
    expect(offers).toHaveLength(3);
    expect(order).toEqual(['request', 'search']);
  });

  it('is called off when the caller goes away, and the next one is answered', async () => {
    const { id } = await openCaseOf(practice);
    const { searches, desk } = practice;
    const search = searches.offers.bind(searches);
    const caller = new AbortController();
    let given: Promise<unknown> = Promise.resolve();
    const watched = jest.spyOn(searches, 'offers').mockImplementation((...asked) => {
      const found = search(...asked);
      given = found;
      caller.abort();
      return found;
    });
    const { signal } = caller;
    const path = `/cases/${id}/offers`;
    await expect(desk.call({ method: 'POST', path, body: {}, answer: offersView, signal })).rejects.toThrow(/aborted/);
    await expect(given).rejects.toMatchObject({ code: 'jobs.task-cancelled' });
    watched.mockRestore();
    expect((await askOffers(practice, id)).offers).toHaveLength(3);
  });

  it('is refused in words, not lost, when the service stops', async () => {
    const { id } = await openCaseOf(practice);
    await practice.searches.close();
    await expect(askOffers(practice, id)).rejects.toMatchObject({
      status: 503,
      problem: { code: 'jobs.threads-closed' },
    });
  });
});
