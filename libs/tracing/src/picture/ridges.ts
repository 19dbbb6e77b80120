import { gaussianBlur } from './gaussian.js';
import type { GrayPicture } from './gray-picture.js';
import type { PlatePicture } from './rectify.js';
import type { Point } from '../point.js';

/** A point on the middle of a line in the picture, between pixels; plate mm. */
export interface RidgePoint extends Point {
  /** Direction of the line, degrees in [0, 180). */
  readonly directionDeg: number;
  readonly strength: number;
}

export type Polarity = 'bright' | 'dark';

/** Uneven light and shadows change over more than this, lines over less, mm. */
const BACKGROUND_MM = 1.2;
/** Responses are judged in robust standard deviations of the whole plate: mostly bare background. */
const STRONG = 7;
const WEAK = 3.5;
/** Below this, in grey levels, nothing is a line, however quiet the background. */
const FAINTEST = 0.6;
/** A line runs on for at least this, mm. */
const SHORTEST_MM = 0.7;

interface Responses {
  readonly width: number;
  readonly strength: Float32Array;
  readonly offset: Float32Array;
  readonly angle: Float32Array;
}

/** The plate without its slow changes of light. */
export function flattened(picture: PlatePicture): PlatePicture {
  const background = gaussianBlur(picture, BACKGROUND_MM / picture.mmPerPixel).data;
  return { ...picture, data: picture.data.map((value, at) => value - background[at]!) };
}

/**
 * The plate without its slow changes of light, told from what lies beside the lines alone: a line that has a share in its
 * own background pushes its neighbours away, by hundredths of a millimetre over millimetres.
 *
 * @param lines points that were found along lines of `widthMm`
 * @see Knutsson & Westin (1993), Normalized and differential convolution, CVPR, 515-523
 */
export function flattenedBeside(picture: PlatePicture, lines: readonly RidgePoint[], widthMm: number): PlatePicture {
  const { width, height, mmPerPixel, origin } = picture;
  const reach = Math.ceil(widthMm / mmPerPixel);
  const beside = new Float32Array(width * height).fill(1);
  for (const point of lines) {
    const [x, y] = [Math.round((point.x - origin.x) / mmPerPixel), Math.round((point.y - origin.y) / mmPerPixel)];
    const [left, right] = [Math.max(0, x - reach), Math.min(width, x + reach + 1)];
    for (let row = Math.max(0, y - reach); row <= Math.min(height - 1, y + reach); row++) {
      beside.fill(0, row * width + left, row * width + right);
    }
  }
  const sigma = BACKGROUND_MM / mmPerPixel;
  const share = gaussianBlur({ width, height, data: beside }, sigma).data;
  const { data } = gaussianBlur({ width, height, data: beside.map((one, at) => one * picture.data[at]!) }, sigma);
  // Where lines are all there is, nothing tells the background.
  return {
    ...picture,
    data: picture.data.map((value, at) => (share[at]! < 1e-3 ? 0 : value - data[at]! / share[at]!)),
  };
}

/** Second derivatives across the line at each pixel: strength, where between pixels the line's middle is, its normal. */
function respond({ width, height, data }: GrayPicture, scale: number, polarity: Polarity): Responses {
  const sign = polarity === 'bright' ? -1 : 1;
  const strength = new Float32Array(width * height);
  const offset = new Float32Array(width * height);
  const angle = new Float32Array(width * height);
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const at = y * width + x;
      const here = data[at]!;
      const xx = data[at + 1]! - 2 * here + data[at - 1]!;
      const yy = data[at + width]! - 2 * here + data[at - width]!;
      const middle = sign * (xx + yy);
      // Across the line the second derivative has the polarity's sign, along it there should be little.
      if (middle <= 0) continue;
      const xy = (data[at + width + 1]! - data[at + width - 1]! - data[at - width + 1]! + data[at - width - 1]!) / 4;
      const half = Math.sqrt(((xx - yy) / 2) ** 2 + xy * xy);
      const across = middle / 2 + half;
      const net = across - Math.abs(middle / 2 - half);
      const normal = Math.atan2(2 * sign * xy, sign * (xx - yy)) / 2;
      const slope =
        ((data[at + 1]! - data[at - 1]!) / 2) * Math.cos(normal) +
        ((data[at + width]! - data[at - width]!) / 2) * Math.sin(normal);
      strength[at] = net * scale;
      offset[at] = -slope / (sign * across);
      angle[at] = normal;
    }
  }
  return { width, strength, offset, angle };
}

/** Robust standard deviation of the responses that are there at all. */
function noiseOf(strength: Float32Array): number {
  const sample: number[] = [];
  const stride = Math.max(1, Math.floor(strength.length / 50_000));
  for (let at = 0; at < strength.length; at += stride) if (strength[at]! > 0) sample.push(strength[at]!);
  sample.sort((a, b) => a - b);
  return 1.4826 * (sample[sample.length >> 1] ?? 0);
}

/** Pixels on the middle of a line, grown from strong ones along weak ones; short runs are dropped. */
function linked(responses: Responses, threshold: number, shortest: number): number[] {
  const { width, strength, offset } = responses;
  const isCandidate = (at: number) => strength[at]! >= threshold * (WEAK / STRONG) && Math.abs(offset[at]!) <= 0.75;
  const seen = new Uint8Array(strength.length);
  const kept: number[] = [];
  for (let start = 0; start < strength.length; start++) {
    if (seen[start] === 1 || strength[start]! < threshold || !isCandidate(start)) continue;
    const run = [start];
    seen[start] = 1;
    for (let head = 0; head < run.length; head++) {
      const at = run[head]!;
      for (const step of [1, -1, width, -width, width + 1, width - 1, -width + 1, -width - 1]) {
        const next = at + step;
        if (next < 0 || next >= strength.length || seen[next] === 1 || !isCandidate(next)) continue;
        seen[next] = 1;
        run.push(next);
      }
    }
    const xs = run.map((at) => at % width);
    const ys = run.map((at) => Math.floor(at / width));
    const span = (of: readonly number[]) =>
      of.reduce((high, v) => Math.max(high, v), -Infinity) - of.reduce((low, v) => Math.min(low, v), Infinity);
    if (Math.hypot(span(xs), span(ys)) >= shortest) kept.push(...run);
  }
  return kept;
}

/**
 * Middles of lines of about `widthMm` in a flattened plate picture, bright ones and dark ones.
 *
 * @see Steger (1998), An unbiased detector of curvilinear structures, IEEE Trans. PAMI 20:113-125
 */
export function findRidges(flat: PlatePicture, widthMm: number): Readonly<Record<Polarity, readonly RidgePoint[]>> {
  const sigma = Math.max(1, widthMm / 2 / flat.mmPerPixel);
  const smooth = gaussianBlur(flat, sigma);
  const of = (polarity: Polarity) => {
    const responses = respond(smooth, sigma * sigma, polarity);
    const threshold = Math.max(STRONG * noiseOf(responses.strength), FAINTEST);
    return linked(responses, threshold, SHORTEST_MM / flat.mmPerPixel).map((at) => ridgePoint(flat, responses, at));
  };
  const [bright, dark] = [of('bright'), of('dark')];
  return { bright: withoutOvershoot(bright, dark), dark: withoutOvershoot(dark, bright) };
}

/** Beside a line of the other polarity this much stronger, a line is its overshoot: what smoothing and flattening make. */
const OVERSHOOT = 2;

function withoutOvershoot(points: readonly RidgePoint[], others: readonly RidgePoint[]): readonly RidgePoint[] {
  const cellOf = (across: number) => Math.floor(across / BACKGROUND_MM);
  const strongest = new Map<string, number>();
  for (const { x, y, strength } of others) {
    const cell = `${String(cellOf(x))} ${String(cellOf(y))}`;
    strongest.set(cell, Math.max(strongest.get(cell) ?? 0, strength));
  }
  const near = [-1, 0, 1];
  const besides = ({ x, y }: RidgePoint) =>
    near.flatMap((right) =>
      near.map((down) => strongest.get(`${String(cellOf(x) + right)} ${String(cellOf(y) + down)}`) ?? 0),
    );
  return points.filter((point) => Math.max(...besides(point)) <= OVERSHOOT * point.strength);
}

function ridgePoint({ origin, mmPerPixel, width }: PlatePicture, responses: Responses, at: number): RidgePoint {
  const normal = responses.angle[at]!;
  const shift = responses.offset[at]!;
  return {
    x: origin.x + ((at % width) + shift * Math.cos(normal)) * mmPerPixel,
    y: origin.y + (Math.floor(at / width) + shift * Math.sin(normal)) * mmPerPixel,
    directionDeg: ((normal * 180) / Math.PI + 90 + 360) % 180,
    strength: responses.strength[at]!,
  };
}
