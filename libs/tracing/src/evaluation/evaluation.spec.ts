import { seededRandom } from '@archwright/kernel';
import fc from 'fast-check';
import { TracingError } from '../errors.js';
import { modelApexAngleDeg } from '../movement/planar-model.js';
import { distance, toRadians, type Point } from '../point.js';
import { evaluateTracing, type Evaluation } from './evaluation.js';
import { roundingFromGapMm } from './rounding.js';
import { syntheticTracing, type SyntheticTracing } from './synthetic-tracing.builder.js';
import type { Phase, TracedPoint, TracingInput } from './tracing-input.js';

const points = (phase: Phase, of: readonly (readonly [number, number])[]): TracedPoint[] =>
  of.map(([x, y]) => ({ x, y, phase }));
const asWorn = (...of: readonly TracedPoint[][]): TracingInput => ({
  points: of.flat(),
  stylusOn: 'lower',
  view: 'as-worn',
});

function evaluated(input: TracingInput): Evaluation {
  const found = evaluateTracing(input);
  if (found.apex === null) throw new Error('no apex');
  return found;
}

// By hand: right y = x/2 + 1, left y = 2.1 - 0.6 x; they cross at (1, 1.5).
const EXACT = asWorn(
  points('right', [
    [2, 2],
    [4, 3],
    [6, 4],
  ]),
  points('left', [
    [0, 2.1],
    [-2, 3.3],
    [-4, 4.5],
  ]),
);

const synthetic: fc.Arbitrary<SyntheticTracing> = fc.record({
  apex: fc.record({ x: fc.integer({ min: -5, max: 5 }), y: fc.integer({ min: -5, max: 5 }) }),
  intercondylarMm: fc.integer({ min: 95, max: 125 }),
  needleMm: fc.integer({ min: 65, max: 100 }),
  rotationDeg: fc.integer({ min: 3, max: 5 }),
  noiseMm: fc.constantFrom(0, 0.02, 0.05),
});

describe('tracing evaluation', () => {
  it('gives the arms and apex of a drawing computed by hand', () => {
    const found = evaluated(EXACT);
    expect(distance(found.apex, { x: 1, y: 1.5 })).toBeLessThan(1e-9);
    expect(found.arms.right.angleDeg).toBeCloseTo(26.565, 3);
    expect(found.arms.left.angleDeg).toBeCloseTo(30.964, 3);
    expect(found.apexAngleDeg).toBeCloseTo(122.471, 3);
    expect(found.asymmetryDeg).toBeCloseTo(4.399, 3);
    expect(found.roundingRadiusMm).toBeNull();
    expect(found.closures).toBeNull();
  });

  it('finds apex and angle of the planar model, straight or arched, under the noise of a hand', () => {
    fc.assert(
      fc.property(synthetic, fc.integer({ min: 1, max: 1e6 }), (of, seed) => {
        const found = evaluated(syntheticTracing(of, seededRandom(seed)));
        expect(distance(found.apex, of.apex)).toBeLessThan(0.02 + 3 * of.noiseMm);
        expect(Math.abs(found.apexAngleDeg - modelApexAngleDeg(of))).toBeLessThan(1 + 70 * of.noiseMm);
        expect(found.apexCount).toBe('single');
        expect(Math.abs(found.protrusiveDeviationDeg ?? 99)).toBeLessThan(2 + 20 * of.noiseMm);
      }),
      { seed: 11, numRuns: 50 },
    );
  });

  it('says how uncertain the apex is: the truth lies within three times that, nearly always', () => {
    let within = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const of = { apex: { x: 0, y: 0 }, intercondylarMm: 110, needleMm: 85, rotationDeg: 4, noiseMm: 0.05 };
      const found = evaluated(syntheticTracing(of, seededRandom(seed)));
      expect(found.apexUncertaintyMm).toBeGreaterThan(0.002);
      expect(found.apexUncertaintyMm).toBeLessThan(0.15);
      if (distance(found.apex, of.apex) < 3 * found.apexUncertaintyMm) within++;
    }
    expect(within).toBeGreaterThanOrEqual(55);
  });

  it('is not led astray by gaps and one wild stroke', () => {
    fc.assert(
      fc.property(synthetic, fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 10, max: 40 }), (of, seed, at) => {
        const input = syntheticTracing(of, seededRandom(seed));
        const torn = input.points.filter(
          (point, index) => point.phase === 'closure' || index % 80 < at || index % 80 > at + 8,
        );
        const stroke = Array.from({ length: 10 }, (_, step) => ({
          x: of.apex.x + 3 + step / 10,
          y: of.apex.y + 5 - step / 5,
          phase: 'right' as const,
        }));
        const found = evaluated({ ...input, points: [...torn, ...stroke] });
        expect(distance(found.apex, of.apex)).toBeLessThan(0.06 + 3 * of.noiseMm);
      }),
      { seed: 12, numRuns: 50 },
    );
  });

  it('answers the same for a mirrored view, and turned for a needle on the upper jaw', () => {
    fc.assert(
      fc.property(synthetic, fc.integer({ min: 1, max: 1e6 }), (of, seed) => {
        const input = syntheticTracing(of, seededRandom(seed));
        const there = evaluated(input);
        const mirrored = evaluated({
          ...input,
          view: 'mirrored',
          points: input.points.map((p) => ({ ...p, x: -p.x })),
        });
        expect(distance(mirrored.apex, there.apex)).toBeLessThan(1e-9);
        expect(mirrored.apexAngleDeg).toBeCloseTo(there.apexAngleDeg, 9);
        expect(mirrored.protrusiveDeviationDeg).toBeCloseTo(there.protrusiveDeviationDeg ?? NaN, 9);
        const turned = evaluated({
          ...input,
          stylusOn: 'upper',
          points: input.points.map((p) => ({ ...p, x: -p.x, y: -p.y })),
        });
        expect(distance(turned.apex, { x: -there.apex.x, y: -there.apex.y })).toBeLessThan(1e-9);
        expect(turned.apexAngleDeg).toBeCloseTo(there.apexAngleDeg, 9);
        expect(turned.offsetForwardMm).toBeCloseTo(there.offsetForwardMm ?? NaN, 9);
      }),
      { seed: 13, numRuns: 40 },
    );
  });

  it('gives wild points no say in size, path or gaps, and answers alike from a far origin', () => {
    const of = { apex: { x: 2, y: 3 }, intercondylarMm: 110, needleMm: 85, rotationDeg: 5, noiseMm: 0.03 };
    const input = syntheticTracing(of, seededRandom(1));
    const wild = { x: 135, y: 35 };
    const strayed = evaluated({
      ...input,
      points: [...input.points, { ...wild, phase: 'right' }, { x: 15, y: 8, phase: 'protrusive' }],
    });
    expect(distance(strayed.apex, of.apex)).toBeLessThan(0.1);
    expect(Math.abs(strayed.protrusiveDeviationDeg ?? 99)).toBeLessThan(2);
    expect(strayed.form).toBe('typical');
    const far = evaluated({ ...input, points: input.points.map((p) => ({ ...p, x: p.x + 1e6, y: p.y - 1e6 })) });
    expect(far.apexAngleDeg).toBeCloseTo(evaluated(input).apexAngleDeg, 4);
  });

  it('uses the whole arm where a gap leaves a short stretch of it near the apex', () => {
    const of = { apex: { x: 0, y: 0 }, intercondylarMm: 110, needleMm: 85, rotationDeg: 5, noiseMm: 0.03 };
    const input = syntheticTracing(of, seededRandom(1));
    const torn = input.points.filter(({ phase, x }) => phase !== 'right' || x < 2 || x > 4.5);
    const found = evaluated({ ...input, points: torn });
    expect(Math.abs(found.apexAngleDeg - modelApexAngleDeg(of))).toBeLessThan(3);
    expect(found.form).toBe('interrupted');
  });

  it('doubts a needle or a view that the drawing speaks against', () => {
    expect(evaluated(EXACT).doubts).toEqual([]);
    expect(evaluated({ ...EXACT, view: 'mirrored' }).doubts).toEqual(['arms-swapped']);
    expect(evaluated({ ...EXACT, stylusOn: 'upper' }).doubts).toEqual(['arms-swapped', 'turned']);
    const onItsSide = EXACT.points.map((p) => ({ ...p, x: -p.y, y: p.x }));
    expect(evaluated({ ...EXACT, points: onItsSide }).doubts).toEqual(['turned']);
  });
});

/** A drawing of straight arms 30 degrees from the transverse axis that turn into one another on a circle. */
function roundedTracing(radiusMm: number): TracingInput {
  const centre = radiusMm / Math.sin(toRadians(60));
  const tangentLength = radiusMm / Math.tan(toRadians(60));
  const arm: Point[] = [];
  for (let s = tangentLength; s < 7; s += 0.1)
    arm.push({ x: s * Math.cos(toRadians(30)), y: s * Math.sin(toRadians(30)) });
  for (let degrees = 0; degrees <= 30; degrees += 2) {
    const angle = toRadians(degrees - 90);
    arm.push({ x: radiusMm * Math.cos(angle), y: centre + radiusMm * Math.sin(angle) });
  }
  return asWorn(
    arm.map((point) => ({ ...point, phase: 'right' })),
    arm.map(({ x, y }) => ({ x: -x, y, phase: 'left' })),
  );
}

describe('form', () => {
  // Gap 0.31 mm at 120 degrees: r = 0.31 / (1 / sin 60° - 1).
  it('measures the rounding of the apex', () => {
    expect(roundingFromGapMm(120, 0.31)).toBeCloseTo(2.004, 3);
    for (const radius of [0.4, 0.8, 1.2]) {
      const found = evaluated(roundedTracing(radius));
      expect(found.roundingRadiusMm).toBeCloseTo(radius, 1);
      expect(found.form).toBe(radius < 0.5 ? 'typical' : 'rounded');
    }
  });

  it('calls no sharp apex rounded for the distance of its points', () => {
    for (const stepMm of [0.1, 0.25, 0.3]) {
      const arm = Array.from({ length: Math.floor(6 / stepMm) }, (_, at) => (at + 1) * stepMm);
      for (const angle of [15, 30, 40].map(toRadians)) {
        const [x, y] = [Math.cos(angle), Math.sin(angle)];
        const sharp = asWorn(
          points(
            'right',
            arm.map((s) => [s * x, s * y]),
          ),
          points(
            'left',
            arm.map((s) => [-s * x, s * y]),
          ),
        );
        expect(evaluated(sharp).roundingRadiusMm ?? 0).toBeLessThan(0.5);
      }
    }
  });

  it('calls no sharp apex rounded for the scatter of its points, and a blunt one still', () => {
    const sharp = { apex: { x: 0, y: 0 }, intercondylarMm: 110, needleMm: 80, rotationDeg: 5, noiseMm: 0.05 };
    const radii = Array.from({ length: 100 }, (_, seed) => evaluated(syntheticTracing(sharp, seededRandom(seed)))).map(
      ({ roundingRadiusMm }) => roundingRadiusMm ?? 0,
    );
    expect(radii.filter((radius) => radius >= 0.5).length).toBeLessThan(6);
    const random = seededRandom(3);
    const shaken = ({ x, y, phase }: TracedPoint) => ({
      x: x + 0.1 * (random.nextUnit() - 0.5),
      y: y + 0.1 * (random.nextUnit() - 0.5),
      phase,
    });
    const blunt = roundedTracing(1.2);
    expect(evaluated({ ...blunt, points: blunt.points.map(shaken) }).form).toBe('rounded');
  });

  const model = { apex: { x: 0, y: 0 }, intercondylarMm: 110, needleMm: 85, rotationDeg: 4, noiseMm: 0.01 };
  const drawn = (of: Partial<SyntheticTracing> = {}) => syntheticTracing({ ...model, ...of }, seededRandom(5));

  it('is typical, miniature or dorsally extended', () => {
    expect(evaluated(drawn()).form).toBe('typical');
    expect(evaluated(drawn({ rotationDeg: 1.5 })).form).toBe('miniature');
    const behind = points('protrusive', [
      [0, -0.3],
      [0, -0.6],
      [0, -0.9],
    ]);
    const found = evaluated({ ...drawn(), points: [...drawn().points, ...behind] });
    expect(found.form).toBe('dorsally-extended');
    expect(found.dorsalExtensionMm).toBeCloseTo(0.9, 1);
  });

  it('is double when both arms were drawn twice, or the patient closes in two places', () => {
    const again = drawn().points.filter(({ phase }) => phase === 'right' || phase === 'left');
    const shifted = again.map((point) => ({ ...point, y: point.y + 1.2 }));
    const twice = evaluated({ ...drawn(), points: [...drawn().points, ...shifted] });
    expect(twice).toMatchObject({ apexCount: 'double', form: 'double' });
    expect(distance(twice.apex, twice.secondApex ?? twice.apex)).toBeGreaterThan(0.5);
    const elsewhere = [0, 0.05, 0.1, 0.05].map((x) => ({ x, y: 1.4 + x, phase: 'closure' as const }));
    const closes = evaluated({ ...drawn(), points: [...drawn().points, ...elsewhere] });
    expect(closes.apexCount).toBe('double');
  });

  it('is asymmetric when one arm is short, and interrupted over a gap', () => {
    const short = drawn().points.filter(({ phase, x }) => phase !== 'left' || x > -3);
    expect(evaluated({ ...drawn(), points: short })).toMatchObject({ form: 'asymmetric' });
    const torn = drawn().points.filter(({ phase, x }) => phase !== 'right' || x < 2 || x > 3.5);
    expect(evaluated({ ...drawn(), points: torn })).toMatchObject({ form: 'interrupted' });
  });
});

describe('what is no tracing', () => {
  const code = (run: () => unknown): string => {
    try {
      run();
    } catch (error) {
      if (error instanceof TracingError) return error.code;
      throw error;
    }
    return 'accepted';
  };

  it('has no apex when the arms lie nearly in one line', () => {
    const flat = asWorn(
      points('right', [
        [1, 0.1],
        [3, 0.3],
        [5, 0.45],
      ]),
      points('left', [
        [-1, 0.1],
        [-3, 0.25],
        [-5, 0.5],
      ]),
    );
    expect(evaluateTracing(flat)).toEqual({ apex: null, closures: null });
  });

  it('is refused with the reason', () => {
    const line = asWorn(
      points('right', [
        [1, 1],
        [2, 2],
        [3, 3],
      ]),
      points('left', [
        [-1, -1],
        [-2, -2],
        [-3, -3],
      ]),
    );
    expect(code(() => evaluateTracing(line))).toBe('tracing.collinear');
    const few = asWorn(
      points('right', [
        [1, 1],
        [2, 2],
      ]),
      points('left', [
        [-1, 1],
        [-2, 2],
        [-3, 3],
        [-4, 4],
      ]),
    );
    expect(code(() => evaluateTracing(few))).toBe('tracing.too-few-points');
    const pixels = { ...EXACT, points: EXACT.points.map((p) => ({ ...p, x: p.x * 100, y: p.y * 100 })) };
    expect(code(() => evaluateTracing(pixels))).toBe('tracing.unit');
    const centimetres = { ...EXACT, points: EXACT.points.map((p) => ({ ...p, x: p.x / 10, y: p.y / 10 })) };
    expect(code(() => evaluateTracing(centimetres))).toBe('tracing.unit');
    const elsewhere = { ...EXACT, points: [...EXACT.points, { x: 400, y: 1, phase: 'closure' as const }] };
    expect(code(() => evaluateTracing(elsewhere))).toBe('tracing.unit');
    const twoPlaces = asWorn(
      points(
        'right',
        Array.from({ length: 9 }, (_, at) => [1 + (at % 2), 1] as const),
      ),
      EXACT.points.filter(({ phase }) => phase === 'left'),
    );
    expect(code(() => evaluateTracing(twoPlaces))).toBe('tracing.too-few-points');
    const many = { ...EXACT, points: Array.from({ length: 60_000 }, (_, at) => EXACT.points[at % 6]!) };
    expect(code(() => evaluateTracing(many))).toBe('tracing.too-many-points');
    const bad = { ...EXACT, points: [...EXACT.points, { x: NaN, y: 1, phase: 'right' as const }] };
    expect(() => evaluateTracing(bad)).toThrow(/point 7 is no pair of finite numbers/);
  });
});
