import { benchSearch } from './search-params.js';

it('names what it does not keep, so that the router does not take it from elsewhere', () => {
  expect('on' in benchSearch({ on: '2027-02-30' })).toBe(true);
});

it.each([
  [
    { on: '2027-01-05', centre: 'w' },
    { on: '2027-01-05', centre: 'w' },
  ],
  [{ on: '2027-02-30' }, {}],
  [{ on: '2027-02' }, {}],
  [{ from: 'tomorrow', lab: '' }, {}],
  [{ from: ['2027-01-05'], other: 'x' }, {}],
  [{ centre: 7 }, { centre: '7' }],
])('keeps of %j what a screen can use', (raw, kept) => {
  expect(benchSearch(raw)).toEqual(kept);
});
