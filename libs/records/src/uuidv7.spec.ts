import { uuidv7 } from './uuidv7.js';

describe('uuidv7', () => {
  // Source: RFC 9562, appendix A.6: the instant 1645557742000 gives the first 48 bits 017f22e2-79b0.
  it('starts with the instant and carries version 7 and variant 10', () => {
    expect(uuidv7(1_645_557_742_000)).toMatch(/^017f22e2-79b0-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });

  it('sorts by instant and never repeats', () => {
    const made = Array.from({ length: 1000 }, (_, ms) => uuidv7(1_700_000_000_000 + ms));
    expect([...made].sort()).toEqual(made);
    expect(new Set(Array.from({ length: 10_000 }, () => uuidv7(0))).size).toBe(10_000);
  });
});

it('sorts by the order of making within a millisecond too', () => {
  const made = Array.from({ length: 2_000 }, () => uuidv7(1_800_000_000_000));
  expect([...made].sort()).toEqual(made);
  expect(new Set(made).size).toBe(made.length);
});
