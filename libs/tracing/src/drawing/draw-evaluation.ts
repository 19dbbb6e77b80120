import type { Ellipses } from '../closures/ellipse.js';
import type { Evaluation, NoApex } from '../evaluation/evaluation.js';
import type { Phase, TracingInput } from '../evaluation/tracing-input.js';
import type { Point } from '../point.js';
import { armEnds } from './arm-ends.js';

/** Pixels per millimetre of the drawing's own size; it scales without loss. */
const SCALE = 40;
const MARGIN_MM = 1.5;
const TEXT_MM = 0.45;
const SCALE_BAR_MM = 5;

/** Phases are told apart by shape as well as by colour, and stay so in grey print. */
const INK: Readonly<Record<Phase, { readonly colour: string; readonly shape: 'dot' | 'square' | 'cross' | 'ring' }>> = {
  right: { colour: '#0b5a7a', shape: 'dot' },
  left: { colour: '#8a3b12', shape: 'square' },
  protrusive: { colour: '#4d4d4d', shape: 'cross' },
  closure: { colour: '#5b2a86', shape: 'ring' },
};
const FIT = '#111111';

interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const number = (value: number): string => String(Math.round(value * 1000) / 1000);

/** As worn, seen from above the patient's head turned to the viewer: forward is up, the patient's right is on the left. */
const place = ({ x, y }: Point): Point => ({ x: -x, y: -y });

function frameOf(points: readonly Point[]): Frame {
  const placed = points.map(place);
  const [xs, ys] = [placed.map(({ x }) => x), placed.map(({ y }) => y)];
  const left = Math.min(...xs) - MARGIN_MM;
  const top = Math.min(...ys) - MARGIN_MM;
  return {
    left,
    top,
    width: Math.max(...xs) + MARGIN_MM - left,
    // Room for the scale bar below.
    height: Math.max(...ys) + 2 * MARGIN_MM - top,
  };
}

function mark(point: Point, phase: Phase): string {
  const { x, y } = place(point);
  const { colour, shape } = INK[phase];
  switch (shape) {
    case 'dot':
      return `<circle cx="${number(x)}" cy="${number(y)}" r="0.06" fill="${colour}"/>`;
    case 'square':
      return `<rect x="${number(x - 0.055)}" y="${number(y - 0.055)}" width="0.11" height="0.11" fill="${colour}"/>`;
    case 'cross':
      return `<path d="M${number(x - 0.07)} ${number(y)}h0.14M${number(x)} ${number(y - 0.07)}v0.14" stroke="${colour}" stroke-width="0.03"/>`;
    case 'ring':
      return `<circle cx="${number(x)}" cy="${number(y)}" r="0.12" fill="none" stroke="${colour}" stroke-width="0.04"/>`;
  }
}

/** Arm as the straight line of its tangent, over its length. */
function armLine(apex: Point, end: Point): string {
  const [from, to] = [place(apex), place(end)];
  return `<line x1="${number(from.x)}" y1="${number(from.y)}" x2="${number(to.x)}" y2="${number(to.y)}" stroke="${FIT}" stroke-width="0.035"/>`;
}

function ellipse(centre: Point, { axisDeg, ofMean }: Ellipses): string {
  const { x, y } = place(centre);
  return (
    `<ellipse cx="${number(x)}" cy="${number(y)}" rx="${number(ofMean.semiMajor)}" ry="${number(ofMean.semiMinor)}" ` +
    `transform="rotate(${number(axisDeg)} ${number(x)} ${number(y)})" fill="none" stroke="${INK.closure.colour}" stroke-width="0.03"/>`
  );
}

const text = (x: number, y: number, words: string, anchor: 'start' | 'middle' | 'end' = 'start'): string =>
  `<text x="${number(x)}" y="${number(y)}" font-size="${String(TEXT_MM)}" text-anchor="${anchor}" fill="${FIT}">${words}</text>`;

function legend({ left, top, width, height }: Frame): string {
  const bottom = top + height - MARGIN_MM / 2;
  const start = left + MARGIN_MM / 2;
  return [
    `<path d="M${number(start)} ${number(bottom)}h${String(SCALE_BAR_MM)}" stroke="${FIT}" stroke-width="0.06"/>`,
    text(start, bottom - 0.2, `${String(SCALE_BAR_MM)} mm`),
    text(start, top + TEXT_MM, 'R'),
    text(left + width - MARGIN_MM / 2, top + TEXT_MM, 'L', 'end'),
    text(left + width / 2, top + TEXT_MM, 'forward', 'middle'),
  ].join('');
}

function summary(evaluation: Evaluation | NoApex): string {
  if (evaluation.apex === null) return 'Needle-point tracing without an apex.';
  const { apexAngleDeg, apexUncertaintyMm, form } = evaluation;
  return `Needle-point tracing, form ${form.replace('-', ' ')}, apex angle ${apexAngleDeg.toFixed(1)} degrees, apex known to ${apexUncertaintyMm.toFixed(2)} mm.`;
}

/**
 * The evaluation as a picture to keep with the case: points as worn, fitted arms, apex with its uncertainty, closures
 * with the region of their mean, and a scale.
 *
 * @returns an SVG document whose text is ours alone: nothing of the patient stands in it
 */
export function drawEvaluation(input: TracingInput, evaluation: Evaluation | NoApex): string {
  const mirror = input.view === 'mirrored' ? -1 : 1;
  const points = input.points.map((point) => ({ ...point, x: mirror * point.x }));
  const frame = frameOf([...points, ...(evaluation.apex === null ? [] : [evaluation.apex])]);
  const parts = points.map((point) => mark(point, point.phase));
  if (evaluation.apex !== null) {
    const { apex, apexUncertaintyMm } = evaluation;
    const ends = armEnds(evaluation, input.stylusOn);
    const { x, y } = place(apex);
    parts.push(
      armLine(apex, ends.right),
      armLine(apex, ends.left),
      `<circle cx="${number(x)}" cy="${number(y)}" r="${number(apexUncertaintyMm)}" fill="none" stroke="${FIT}" stroke-width="0.02"/>`,
      `<path d="M${number(x - 0.25)} ${number(y)}h0.5M${number(x)} ${number(y - 0.25)}v0.5" stroke="${FIT}" stroke-width="0.03"/>`,
    );
  }
  if (evaluation.closures?.ellipses != null)
    parts.push(ellipse(evaluation.closures.mean, evaluation.closures.ellipses));
  const { left, top, width, height } = frame;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" width="${number(width * SCALE)}" height="${number(height * SCALE)}" ` +
    `viewBox="${number(left)} ${number(top)} ${number(width)} ${number(height)}" font-family="sans-serif">` +
    `<title>${summary(evaluation)}</title>` +
    `<rect x="${number(left)}" y="${number(top)}" width="${number(width)}" height="${number(height)}" fill="#ffffff"/>` +
    `${parts.join('')}${legend(frame)}</svg>\n`
  );
}
