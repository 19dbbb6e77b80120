import type { PathLoop, TreatmentPath } from '@archwright/protocol';
import { fittedLanes } from './lanes.js';

/** From one visit to the next; between them stands the laboratory work. */
const STEP = 208;
const LEFT = 84;
const BOX = 140;
const LABEL = 148;
/** Room for a finger. */
const LANE = 44;
const RADIUS = 20;
const TOP = 6;

export interface DrawnPart {
  readonly code: string;
  /** Middle of the part. */
  readonly x: number;
  readonly y: number;
}

export interface DrawnVisit extends DrawnPart {
  readonly isDelivery: boolean;
  readonly isLater: boolean;
}

/** A wait or a way back: a line between two places, with its name in the middle. */
export interface DrawnSpan extends DrawnPart {
  readonly d: string;
}

export interface PathPicture {
  readonly width: number;
  readonly height: number;
  readonly box: number;
  readonly radius: number;
  readonly visits: readonly DrawnVisit[];
  readonly steps: readonly DrawnPart[];
  /** Stretches of laboratory work, each named on its way down. */
  readonly phases: readonly DrawnPart[];
  /** Ways down to the laboratory, from step to step, and up again to the visit that needs the work. */
  readonly ways: readonly { readonly key: string; readonly d: string }[];
  readonly waits: readonly DrawnSpan[];
  readonly loops: readonly DrawnSpan[];
  /** Where something stands before which a gate is. */
  readonly gates: readonly DrawnPart[];
}

/** A path as a line between clinic and laboratory: visits in a row, work below it, waits above and ways back beneath. */
export function drawPath(path: TreatmentPath): PathPicture {
  const { visits, labPhases, lags, loops } = path;
  const xOfVisit = new Map(visits.map(({ code }, index) => [code, LEFT + STEP * index]));
  const placed = labPhases.filter(({ after, before }) => xOfVisit.has(after) && xOfVisit.has(before));
  const columnOf = (after: string): number => (xOfVisit.get(after) ?? 0) + STEP / 2;
  const xOf = new Map([
    ...xOfVisit,
    ...placed.flatMap(({ after, steps }) => steps.map(({ code }) => [code, columnOf(after)] as const)),
  ]);
  const waitSpans = fittedLanes(lags.flatMap(({ code, from, to }) => spanOf(code, xOf.get(from), xOf.get(to))));
  const visitY = TOP + LANE * waitSpans.lanes + LANE / 2;
  const phaseY = visitY + LANE;
  const stepY = (index: number): number => phaseY + LANE * (index + 1);
  const steps = placed.flatMap(({ after, steps: own }) =>
    own.map(({ code }, index) => ({ code, x: columnOf(after), y: stepY(index) })),
  );
  const yOf = new Map([
    ...visits.map(({ code }) => [code, visitY] as const),
    ...steps.map(({ code, y }) => [code, y] as const),
  ]);
  const loopTop = stepY(Math.max(0, ...placed.map(({ steps: own }) => own.length))) - LANE / 2 + 12;
  const loopSpans = fittedLanes(
    loops.flatMap((loop) => spanOf(loop.code, xOf.get(latest(loop, xOf)), xOf.get(target(loop, xOf)))),
  );
  return {
    width: LEFT * 2 + STEP * Math.max(0, visits.length - 1),
    height: loopTop + LANE * loopSpans.lanes + 8,
    box: BOX,
    radius: RADIUS,
    visits: visits.map(({ code, isDelivery, chained }) => ({
      ...{ code, x: xOf.get(code) ?? 0, y: visitY },
      ...{ isDelivery, isLater: !chained },
    })),
    steps,
    phases: placed.map(({ code, after }) => ({ code, x: columnOf(after), y: phaseY })),
    ways: placed.flatMap((phase) => waysOf(phase, xOf, yOf)),
    waits: waitSpans.spans.map(({ code, from, to, lane }) => {
      const y = TOP + LANE * (waitSpans.lanes - lane - 1) + LANE / 2;
      return {
        code,
        x: (from + to) / 2,
        y,
        d: `M${at(from, visitY - RADIUS)}V${String(y)}H${String(to)}V${String(visitY - RADIUS)}`,
      };
    }),
    loops: loopSpans.spans.map(({ code, from, to, lane }) => {
      const y = loopTop + LANE * lane + LANE / 2;
      return {
        code,
        x: (from + to) / 2,
        y,
        d: `M${at(from, y - 14)}V${String(y)}H${String(to)}V${String(y - 14)}l-4 6m4 -6l4 6`,
      };
    }),
    gates: gatesOf(path, xOf, yOf),
  };
}

/** Nothing for a part whose ends are not there: it is named as a fault. */
function spanOf(code: string, from: number | undefined, to: number | undefined) {
  if (from === undefined || to === undefined) return [];
  const middle = (from + to) / 2;
  const [least, most] = [Math.min(from, to, middle - LABEL / 2), Math.max(from, to, middle + LABEL / 2)];
  return [{ code, from, to, least, most }];
}

function latest({ foundAt }: PathLoop, xOf: ReadonlyMap<string, number>): string {
  return foundAt.reduce((best, code) => ((xOf.get(code) ?? -1) > (xOf.get(best) ?? -1) ? code : best), '');
}

const target = (loop: PathLoop, xOf: ReadonlyMap<string, number>): string =>
  loop.remedy.kind === 'return' ? loop.remedy.to : latest(loop, xOf);

function waysOf(
  { code, after, before, steps }: TreatmentPath['labPhases'][number],
  xOf: ReadonlyMap<string, number>,
  yOf: ReadonlyMap<string, number>,
): { key: string; d: string }[] {
  const x = xOf.get(steps[0]?.code ?? '') ?? 0;
  const [left, right] = [x - BOX / 2, x + BOX / 2];
  const y = (part: string): number => yOf.get(part) ?? 0;
  const followed = new Set(steps.flatMap((step) => step.after.map((arrow) => arrow.code)));
  const between = steps.flatMap((step) =>
    step.after.map((arrow) => {
      const key = `${code} ${arrow.code} ${step.code}`;
      if (arrow.code === after) {
        return { key, d: `M${at(xOf.get(after) ?? 0, y(after) + RADIUS)}V${String(y(step.code))}H${String(left)}` };
      }
      const isNext = y(step.code) - y(arrow.code) === LANE;
      return isNext
        ? { key, d: `M${at(x, y(arrow.code) + 15)}V${String(y(step.code) - 15)}` }
        : { key, d: `M${at(left, y(arrow.code) + 6)}h-12V${String(y(step.code) - 6)}h12` };
    }),
  );
  const up = steps
    .filter((step) => !followed.has(step.code))
    .map((step) => ({
      key: `${code} ${step.code} ${before}`,
      d: `M${at(right, y(step.code))}H${String(xOf.get(before) ?? 0)}V${String(y(before) + RADIUS)}`,
    }));
  return [...between, ...up];
}

function gatesOf(
  { gates }: TreatmentPath,
  xOf: ReadonlyMap<string, number>,
  yOf: ReadonlyMap<string, number>,
): DrawnPart[] {
  return gates.flatMap(({ code, before }) => {
    const [x, y] = [xOf.get(before.code), yOf.get(before.code)];
    if (x === undefined || y === undefined) return [];
    if (before.kind === 'lab-step') return [{ code, x: x - BOX / 2, y: y - 14 }];
    return [before.kind === 'visit' ? { code, x: x - RADIUS, y: y - 12 } : { code, x: x + RADIUS, y: y + 12 }];
  });
}

const at = (x: number, y: number): string => `${String(x)} ${String(y)}`;

/** Where in the order a visit lies that was carried so far along the line. */
export function placeAlong({ visits }: TreatmentPath, code: string, along: number): number {
  const place = visits.findIndex((visit) => visit.code === code) + Math.round(along / STEP);
  return Math.min(Math.max(place, 0), visits.length - 1);
}
