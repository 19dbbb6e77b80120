import type { Adapter } from './adapter.js';
import { agreement } from './adapters/agreement.js';
import { charts } from './adapters/charts.js';
import { geometry } from './adapters/geometry.js';
import { numerics } from './adapters/numerics.js';
import { outliers } from './adapters/outliers.js';
import { differences, type Difference } from './compare.js';
import { caseName } from './method-names.js';
import type { ReferenceCase } from './reference-case.js';

const ADAPTERS: Readonly<Record<string, Adapter>> = { ...outliers, ...charts, ...agreement, ...geometry, ...numerics };

export type Outcome =
  | { readonly kind: 'met' }
  | { readonly kind: 'missed'; readonly differences: readonly Difference[] }
  | { readonly kind: 'not-offered' };

/** Runs the product on one case. A refusal where an answer is expected counts as missed. */
export function checkCase({ method, input, expected, tolerance }: ReferenceCase): Outcome {
  const name = caseName(method);
  const adapter = Object.hasOwn(ADAPTERS, name) ? ADAPTERS[name] : undefined;
  if (adapter === undefined) return { kind: 'not-offered' };
  let got: unknown;
  try {
    got = adapter.run((name === 'quantiles' ? { expected } : input) as never);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    return { kind: 'missed', differences: [{ at: '', expected, got: message, difference: null }] };
  }
  const found = differences(expected, got, tolerance, adapter.tolerances);
  return found.length === 0 ? { kind: 'met' } : { kind: 'missed', differences: found };
}
