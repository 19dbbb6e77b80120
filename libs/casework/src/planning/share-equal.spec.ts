import { shareEqual } from './share-equal.js';

const table = (...numbers: number[]) => Int32Array.from(numbers);

describe('shareEqual', () => {
  it('gives back the base when nothing differs', () => {
    const base = { lags: [{ key: 'wait', lo: table(1, 2), by: new Map([['north', table(3)]]) }] };
    const next = { lags: [{ key: 'wait', lo: table(1, 2), by: new Map([['north', table(3)]]) }] };
    expect(shareEqual(base, next)).toBe(base);
  });

  it('takes what differs from the next and keeps the rest of the base', () => {
    const base = { lags: [{ lo: table(1, 2) }, { lo: table(5) }], bits: Uint32Array.from([7]) };
    const next = { lags: [{ lo: table(1, 2) }, { lo: table(6) }], bits: Uint32Array.from([7]) };
    const shared = shareEqual(base, next);
    expect(shared).toEqual(next);
    expect(shared.lags[0]).toBe(base.lags[0]);
    expect(shared.bits).toBe(base.bits);
    expect(shared.lags[1]?.lo).toBe(next.lags[1]?.lo);
  });

  it('takes tables of small numbers for what they are', () => {
    const [base, next] = [Uint8Array.from([1, 2]), Uint8Array.from([1, 2])];
    expect(shareEqual(base, next)).toBe(base);
    expect(shareEqual(base, Uint8Array.from([1, 3]))).toBeInstanceOf(Uint8Array);
    expect(shareEqual<unknown>(base, Int32Array.from([1, 2]))).toBeInstanceOf(Int32Array);
  });

  it('never calls lists, maps or tables of other lengths or kinds equal', () => {
    expect(shareEqual<unknown>([1, 2], [1])).toEqual([1]);
    expect(shareEqual<unknown>(new Map([['a', 1]]), new Map())).toEqual(new Map());
    expect(shareEqual<unknown>(table(1), Uint32Array.from([1]))).toEqual(Uint32Array.from([1]));
    expect(shareEqual<unknown>({ a: 1, b: 2 }, { a: 1 })).toEqual({ a: 1 });
    expect(shareEqual<unknown>({ a: null }, { a: {} })).toEqual({ a: {} });
  });
});
