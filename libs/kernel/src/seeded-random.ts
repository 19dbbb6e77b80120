/** A stream of random numbers that is the same on every machine for the same seed. */
export interface SeededRandom {
  /** A whole number in [0, 2^32). */
  nextUint32(): number;
  /** A whole number in [0, bound), without modulo bias. `bound` is a whole number in [1, 2^32). */
  nextBelow(bound: number): number;
  /** A number in [0, 1) on a grid of 2^-32. */
  nextUnit(): number;
}

/**
 * Small fast counter generator ("sfc32", Chris Doty-Humphrey, PractRand; constants from memory), in 32-bit integers
 * only, so that no engine's floating-point library can change a stream.
 *
 * @param seed any number; its low 32 bits are used
 * @param stream index of an independent stream of the same seed
 */
export function seededRandom(seed: number, stream = 0): SeededRandom {
  let a = seed | 0;
  let b = stream | 0;
  let c = 0x9e3779b9 | 0;
  let counter = 1;
  const nextUint32 = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return sum >>> 0;
  };
  // The first outputs still show the seed; twelve rounds mix it in.
  for (let round = 0; round < 12; round++) nextUint32();
  return {
    nextUint32,
    nextBelow(bound) {
      const limit = 0x1_0000_0000 - (0x1_0000_0000 % bound);
      let value = nextUint32();
      while (value >= limit) value = nextUint32();
      return value % bound;
    },
    nextUnit: () => nextUint32() / 0x1_0000_0000,
  };
}
