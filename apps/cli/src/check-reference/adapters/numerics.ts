import {
  betaQuantile,
  chiSquareQuantile,
  fQuantile,
  funnel,
  gammaQuantile,
  lognormalQuantile,
  meanAndSpread,
  normalQuantile,
  proportionInterval,
  tQuantile,
} from '@archwright/screening';
import type { Adapter } from '../adapter.js';

interface Quantile {
  readonly distribution: string;
  readonly p: number;
  readonly a: number;
  readonly b: number;
}

const QUANTILES: Readonly<Record<string, (of: Quantile) => number>> = {
  normal: ({ p, a, b }) => a + b * normalQuantile(p),
  t: ({ p, a }) => tQuantile(p, a),
  chisq: ({ p, a }) => chiSquareQuantile(p, a),
  f: ({ p, a, b }) => fQuantile(p, a, b),
  beta: ({ p, a, b }) => betaQuantile(p, a, b),
  gamma: ({ p, a, b }) => gammaQuantile(p, a, b),
  lognormal: ({ p, a, b }) => lognormalQuantile(p, a, b),
};

type SummaryInput =
  | { readonly values: readonly number[] }
  | { readonly first: number; readonly repeating: readonly number[]; readonly times: number };

const valuesOf = (input: SummaryInput): readonly number[] =>
  'values' in input
    ? input.values
    : [input.first, ...Array.from({ length: input.times }, () => input.repeating).flat()];

export const numerics: Readonly<Record<string, Adapter>> = {
  summary: { run: (input: SummaryInput) => meanAndSpread(valuesOf(input)) },
  /** The expected table names distribution, probability and parameters itself; `expected` is handed in as input. */
  quantiles: {
    run: ({ expected }: { expected: readonly Quantile[] }) =>
      expected.map((of) => ({ ...of, quantile: QUANTILES[of.distribution]?.(of) })),
  },
  proportionInterval: { run: ({ x, n }: { x: number; n: number }) => proportionInterval(x, n) },
  funnel: {
    run: ({ x, n }: { x: readonly number[]; n: readonly number[] }) => {
      const { centre, units } = funnel(x, n);
      return {
        centre,
        z: units.map((unit) => unit.z),
        upper998: units.map((unit) => unit.upper),
        exactUpperTail: units.map((unit) => unit.exactUpperTail),
        exactLowerTail: units.map((unit) => unit.exactLowerTail),
      };
    },
  },
};
