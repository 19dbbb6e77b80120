import { readTracing } from '@archwright/interop';
import {
  drawEvaluation,
  evaluateTracing,
  fromMarks,
  fromScale,
  readPlate,
  type PlaneMap,
  type Point,
  type TracingInput,
} from '@archwright/tracing';
import { readArguments, readOneFile, UsageError } from '../arguments.js';
import { readInput, writeOutput } from '../read-input.js';
import { isPicture, readPicture } from './read-picture.js';
import { tracingLines, tracingReport } from './tracing-report.js';

const USAGE = `cli trace FILE --stylus lower|upper --view as-worn|mirrored [--posture TEXT] [--json] [--svg OUT]
FILE: CSV with the header phase,x_mm,y_mm; phases right, left, protrusive, closure.
Or a PNG or JPEG of the plate, its top the patient's forward, with one of
  --scale MM_PER_PIXEL
  --marks "x1,y1;x2,y2;x3,y3;x4,y4" --marks-mm WxH   four marks of a rectangle, pixels, from top left clockwise
--stylus: the jaw that carried the needle. --view: mirrored for a picture or digitisation of an upper plate from below.
--posture: noted with the answer; apex and closures depend on it.`;

const KEYS = `Keys of the answer (--json), mm and degrees, x to the patient's right, y forward, as worn:
  apex                    xMm, yMm, uncertaintyMm; null when the arms do not make one
  apexPx                  x, y in the picture as given, turned upright as the camera noted; of a picture only
  apexAngleDeg            between the arms at the apex
  arms                    right, left: angleDeg from the transverse axis, lengthMm, rmsMm
  asymmetryDeg            difference of the two angles
  protrusiveDeviationDeg  off the bisector, positive to the patient's right; null where no path was drawn
  roundingRadiusMm        null where the trace does not reach around the apex, and in a picture
  closure                 n, meanXMm, meanYMm, rmsMm, maxPairMm, ellipse (semiMajorMm, semiMinorMm, axisDeg: 95 % region of
                          the mean; null below four); null without closures
  offsetMm                mean of the closures from the apex
  form, verdict, reasons  verdict: pass, caution or fail
  posture, note           as stated; what no verdict replaces`;

type Stated = Pick<TracingInput, 'stylusOn' | 'view'>;
type Values = Readonly<Record<'scale' | 'marks' | 'marks-mm', string | undefined>>;

function choice<const Choice extends string>(
  name: string,
  given: string | undefined,
  choices: readonly Choice[],
): Choice {
  const found = choices.find((option) => option === given);
  if (found !== undefined) return found;
  const said = given === undefined ? `--${name} is missing` : `--${name} "${given}" is not accepted`;
  throw new UsageError(`${said}. Accepted: ${choices.join(', ')}.`, USAGE);
}

const numbersOf = (text: string, separator: string | RegExp): number[] =>
  text.split(separator).map((part) => (part.trim() === '' ? Number.NaN : Number(part)));

function marksOf(text: string): [Point, Point, Point, Point] {
  const points = text.split(';').map((pair) => numbersOf(pair, ','));
  const isFour = points.length === 4 && points.every((pair) => pair.length === 2 && pair.every(Number.isFinite));
  if (!isFour)
    throw new UsageError(`--marks "${text}" is not accepted. Accepted: four pairs x,y parted by ";".`, USAGE);
  return points.map(([x = Number.NaN, y = Number.NaN]) => ({ x, y })) as [Point, Point, Point, Point];
}

/** Scale of the picture: by a number, or by four marks, which also correct its perspective. */
function planeOf({ scale, marks, 'marks-mm': size }: Values): PlaneMap {
  if (scale !== undefined && marks === undefined && size === undefined) return fromScale(Number(scale));
  if (scale === undefined && marks !== undefined && size !== undefined) {
    const [width = Number.NaN, height = Number.NaN, ...rest] = numbersOf(size, /x/i);
    if (rest.length === 0 && Number.isFinite(width) && Number.isFinite(height)) {
      return fromMarks(marksOf(marks), width, height);
    }
    throw new UsageError(`--marks-mm "${size}" is not accepted. Accepted: width x height, such as 40x30.`, USAGE);
  }
  throw new UsageError('A picture needs its scale: give --scale, or --marks with --marks-mm.', USAGE);
}

/** What was traced, and where a point as worn lies in the picture, for a picture. */
async function inputOf(
  bytes: Uint8Array,
  stated: Stated,
  values: Values,
): Promise<{ input: TracingInput; toPicture: ((point: Point) => Point) | null }> {
  if (isPicture(bytes)) {
    const plane = planeOf(values);
    return readPlate(await readPicture(bytes), plane, stated);
  }
  if (values.scale !== undefined || values.marks !== undefined) {
    throw new UsageError('--scale and --marks belong to a PNG or JPEG picture; this file is none.', USAGE);
  }
  return { input: { points: readTracing(bytes), ...stated }, toPicture: null };
}

/** Evaluates a tracing, digitised or as a picture: file in, answer out. Nothing is kept. */
export async function traceCommand(args: readonly string[]): Promise<number> {
  const { values, positionals } = readArguments(args, USAGE, {
    stylus: { type: 'string' },
    view: { type: 'string' },
    posture: { type: 'string' },
    scale: { type: 'string' },
    marks: { type: 'string' },
    'marks-mm': { type: 'string' },
    json: { type: 'boolean' },
    svg: { type: 'string' },
    help: { type: 'boolean' },
  });
  if (values.help === true) {
    process.stdout.write(`Usage: ${USAGE}\n${KEYS}\n`);
    return 0;
  }
  const file = readOneFile(positionals, USAGE);
  const stated: Stated = {
    stylusOn: choice('stylus', values.stylus, ['lower', 'upper']),
    view: choice('view', values.view, ['as-worn', 'mirrored']),
  };
  const { input, toPicture } = await inputOf(await readInput(file), stated, {
    scale: values.scale,
    marks: values.marks,
    'marks-mm': values['marks-mm'],
  });
  const evaluation = evaluateTracing(input);
  const report = tracingReport(evaluation, { toPicture, posture: values.posture ?? null });
  if (values.svg !== undefined) await writeOutput(values.svg, drawEvaluation(input, evaluation));
  process.stdout.write(
    values.json === true ? `${JSON.stringify(report, null, 2)}\n` : `${tracingLines(report).join('\n')}\n`,
  );
  return 0;
}
