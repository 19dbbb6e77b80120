import type { TreatmentPath } from '@archwright/protocol';

const STEP = 128;
const LEFT = 56;
const VISIT_Y = 40;
const LAB_Y = 112;
const LANE = 16;
/** How far along the line a way takes, down and up. */
const DOWN = 24;
const RADIUS = 16;

export interface PathPicture {
  readonly width: number;
  readonly height: number;
  readonly visits: readonly { code: string; x: number; y: number; isDelivery: boolean; isLater: boolean }[];
  /** Ways from a visit down to the laboratory and up again to the visit that needs the work. */
  readonly ways: readonly { key: string; d: string }[];
  readonly bars: readonly { code: string; x: number; y: number; width: number }[];
  /** Waits between visits, as arcs above the line. */
  readonly waits: readonly { code: string; d: string }[];
}

/** A path as a line between clinic and laboratory: visits as discs above, work as bars below, ways as slopes. */
export function drawPath({ visits, labPhases, lags }: TreatmentPath): PathPicture {
  const xOf = (code: string): number => LEFT + STEP * visits.findIndex((visit) => visit.code === code);
  const lanes = Math.max(1, ...labPhases.map(({ steps }) => steps.length));
  const phases = labPhases.filter(({ after, before }) => isAmong(visits, after) && isAmong(visits, before));
  const bars = phases.flatMap(({ after, before, steps }) => {
    const from = xOf(after) + DOWN;
    const until = Math.max(from + 20, xOf(before) - DOWN);
    const width = (until - from) / steps.length;
    return steps.map(({ code }, index) => ({ code, x: from + width * index, y: LAB_Y + LANE * index, width }));
  });
  const ways = phases.map(({ code, after, before, steps }) => {
    const lastY = LAB_Y + LANE * (steps.length - 1) + 5;
    return {
      key: code,
      d:
        `M${String(xOf(after))} ${String(VISIT_Y + RADIUS)}L${String(xOf(after) + DOWN)} ${String(LAB_Y + 5)}` +
        `M${String(Math.max(xOf(after) + DOWN + 20, xOf(before) - DOWN))} ${String(lastY)}L${String(xOf(before))} ${String(VISIT_Y + RADIUS)}`,
    };
  });
  const waits = lags
    .filter(({ from, to }) => isAmong(visits, from) && isAmong(visits, to))
    .map(({ code, from, to }) => {
      const middle = (xOf(from) + xOf(to)) / 2;
      return {
        code,
        d: `M${String(xOf(from))} ${String(VISIT_Y - RADIUS)}Q${String(middle)} 0 ${String(xOf(to))} ${String(VISIT_Y - RADIUS)}`,
      };
    });
  return {
    width: LEFT * 2 + STEP * Math.max(0, visits.length - 1),
    height: LAB_Y + LANE * lanes + 12,
    visits: visits.map(({ code, isDelivery, chained }) => ({
      code,
      x: xOf(code),
      y: VISIT_Y,
      isDelivery,
      isLater: !chained,
    })),
    ways,
    bars,
    waits,
  };
}

/** Where in the order a visit lies that was carried so far along the line. */
export function placeAlong({ visits }: TreatmentPath, code: string, along: number): number {
  const place = visits.findIndex((visit) => visit.code === code) + Math.round(along / STEP);
  return Math.min(Math.max(place, 0), visits.length - 1);
}

const isAmong = (visits: TreatmentPath['visits'], code: string): boolean => visits.some((visit) => visit.code === code);
