import { seededRandom } from '@archwright/kernel';
import { evaluateTracing, readPlate, type TracingInput } from '@archwright/tracing';
import { syntheticTracing } from '../../libs/tracing/src/evaluation/synthetic-tracing.builder.js';
import { syntheticPlate } from '../../libs/tracing/src/picture/synthetic-plate.builder.js';
import { ms, percentile, table } from './figures.js';

const AS_WORN = { stylusOn: 'lower', view: 'as-worn' } as const;
/** 3,873 x 3,098 pixels. */
const TWELVE_MEGAPIXELS_WIDE = 3873;
const MOST_POINTS = 2000;
const KB_PER_MB = 1024;

/** Time of evaluating a tracing from points and from a picture of the plate; the peak counts the picture and its making. */
export function benchTracing(): Promise<string> {
  const usual = syntheticTracing(
    { apex: { x: 0, y: 0 }, intercondylarMm: 110, needleMm: 80, rotationDeg: 5, noiseMm: 0.05 },
    seededRandom(1),
  );
  const { picture, map } = syntheticPlate(seededRandom(1), { width: TWELVE_MEGAPIXELS_WIDE });
  const rows = [
    row(`${String(usual.points.length)} points`, 200, () => evaluateTracing(usual)),
    row(`${String(MOST_POINTS)} points that are no drawing`, 10, () => evaluateTracing(scattered())),
    row('picture of 12 megapixels, read and evaluated', 10, () =>
      evaluateTracing(readPlate(picture, map, AS_WORN).input),
    ),
  ];
  return Promise.resolve(
    table(['what', 'first, ms', 'p50, ms', 'p95, ms', 'peak of the process so far, MB', 'runs'], rows),
  );
}

/** The worst that the contract lets in: points all over the plate, none of which thinning leaves out. */
function scattered(): TracingInput {
  const random = seededRandom(2);
  const points = Array.from({ length: MOST_POINTS }, (_, at) => {
    const side = at % 2 === 0 ? 1 : -1;
    return {
      phase: side === 1 ? ('right' as const) : ('left' as const),
      x: side * (1 + 16 * random.nextUnit()),
      y: 20 * random.nextUnit(),
    };
  });
  return { ...AS_WORN, points };
}

function row(what: string, runs: number, work: () => unknown): string[] {
  const samples = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  const [first = NaN, ...later] = samples;
  return [
    what,
    ms(first),
    ms(percentile(later, 0.5)),
    ms(percentile(later, 0.95)),
    String(Math.round(process.resourceUsage().maxRSS / KB_PER_MB)),
    String(runs),
  ];
}
