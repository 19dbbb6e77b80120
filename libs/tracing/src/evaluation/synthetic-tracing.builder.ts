import type { SeededRandom } from '@archwright/kernel';
import { rotated } from '../movement/planar-model.js';
import { plus, type Point } from '../point.js';
import type { TracedPoint, TracingInput } from './tracing-input.js';

export interface SyntheticTracing {
  readonly apex: Point;
  readonly intercondylarMm: number;
  readonly needleMm: number;
  /** Arc of each arm, degrees of rotation. */
  readonly rotationDeg: number;
  /** Standard deviation of the hand in each coordinate, mm. */
  readonly noiseMm: number;
  readonly closures?: number;
}

/** Two numbers of a standard normal distribution (Box & Muller 1958). */
function normalPair(random: SeededRandom): Point {
  const size = Math.sqrt(-2 * Math.log((random.nextUint32() + 0.5) / 0x1_0000_0000));
  const angle = 2 * Math.PI * random.nextUnit();
  return { x: size * Math.cos(angle), y: size * Math.sin(angle) };
}

/** A tracing whose truth is known: arms of the planar model, a straight protrusive path, closures about the apex. */
export function syntheticTracing(of: SyntheticTracing, random: SeededRandom): TracingInput {
  const noisy = (point: Point, phase: TracedPoint['phase']): TracedPoint => ({
    ...plus(plus(of.apex, point), normalPair(random), of.noiseMm),
    phase,
  });
  const steps = Array.from({ length: 80 }, (_, at) => ((at + 1) / 80) * of.rotationDeg);
  const arm = steps.map((degrees) => rotated(of, degrees));
  return {
    stylusOn: 'lower',
    view: 'as-worn',
    points: [
      ...arm.map((point) => noisy(point, 'right')),
      ...arm.map(({ x, y }) => noisy({ x: -x, y }, 'left')),
      ...Array.from({ length: 30 }, (_, at) => noisy({ x: 0, y: (at + 1) / 5 }, 'protrusive')),
      ...Array.from({ length: of.closures ?? 6 }, () => ({
        ...plus(of.apex, normalPair(random), 0.1),
        phase: 'closure' as const,
      })),
    ],
  };
}
