import { toldWords } from './told.js';

it('says a sentence of the service with its days, times and parts', () => {
  const when = { moment: '2027-02-04T09:20:00.000Z', zone: 'Europe/Berlin' };
  const placement = { day: '2027-03-02' };
  expect(
    toldWords({ code: 'case-next', values: { title: { title: 'Trial placement' }, when, clinic: 'East', placement } }),
  ).toBe('Next: Trial placement, Thursday 4 February 2027, 10:20, East. Placement on Tuesday 2 March 2027.');
  const list = [
    { code: 'day-arrived' as const, values: { n: 1 } },
    { code: 'day-not-firm' as const, values: { n: 2 } },
  ];
  expect(toldWords({ code: 'day', values: { visits: 1, parts: { list } } })).toBe(
    '1 visit: 1 waiting, 2 not yet firm.',
  );
  expect(toldWords({ code: 'day', values: { visits: 3, parts: 'none' } })).toBe('3 visits.');
});
