import { jest } from '@jest/globals';
import { practiceView } from '@archwright/contracts';
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

  it('is refused in words, not lost, when the service stops', async () => {
    const { id } = await openCaseOf(practice);
    await practice.searches.close();
    await expect(askOffers(practice, id)).rejects.toMatchObject({
      status: 503,
      problem: { code: 'jobs.threads-closed' },
    });
  });
});
