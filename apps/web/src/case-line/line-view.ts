import { axisDate, timeOfDay } from '../time/wording.js';
import { localDateOf } from '../time/zone.js';
import { makeAxis, type Axis } from './axis-view.js';

export type LineState = 'done' | 'now' | 'to-come' | 'needs-person';

export interface LineVisit {
  startMs: number;
  endMs: number;
  title: string;
  state: LineState;
  /** Dashed when only held or proposed. */
  firm: boolean;
  againstWish: boolean;
}

export interface LineBar {
  startMs: number;
  endMs: number;
  title: string;
  state: LineState;
}

/** One case as a line between the clinic and the laboratory. */
export interface Line {
  zone: string;
  visits: LineVisit[];
  bars: LineBar[];
  couriers: { direction: 'to-lab' | 'to-clinic'; departMs: number; arriveMs: number }[];
}

export interface Disc {
  x: number;
  y: number;
  state: LineState;
  firm: boolean;
  againstWish: boolean;
  title: string;
  label: { x: number; y: number; date: string; time: string };
}

export interface Bar {
  x: number;
  y: number;
  widthPx: number;
  heightPx: number;
  tone: 0 | 1 | 2;
  state: LineState;
  title: string;
  /** The title when it fits into the bar, else nothing: the list beside the drawing says it. */
  text: string | null;
}

export interface LineDrawing {
  heightPx: number;
  clinicY: number;
  labY: number;
  track: { points: string; firm: boolean }[];
  discs: Disc[];
  bars: Bar[];
}

const LEAST_LABEL_PX = 66;
const LANE_PX = 33;
const TOP_PX = 24;
const LEVELS_PX = 54;
const BAR_PX = 20;
const BAR_GAP_PX = 2;
const CHARACTER_PX = 6.3;

/** Lays several lines on one common axis. An empty list of lines gives no axis. */
export function layLines(lines: readonly Line[], widthPx: number): { axis: Axis; rows: LineDrawing[] } | null {
  const spans = lines.flatMap((line) => [...line.visits, ...line.bars]);
  const zone = lines[0]?.zone;
  if (spans.length === 0 || zone === undefined) return null;
  const axis = makeAxis(
    Math.min(...spans.map((span) => span.startMs)),
    Math.max(...spans.map((span) => span.endMs)),
    widthPx,
    zone,
  );
  return { axis, rows: lines.map((line) => layLine(line, axis)) };
}

function layLine(line: Line, axis: Axis): LineDrawing {
  const labels = placeLabels(line, axis);
  const lanes = 1 + Math.max(0, ...labels.map((label) => label.lane));
  const clinicY = TOP_PX + lanes * LANE_PX + 18;
  const labY = clinicY + LEVELS_PX;
  const discs = [...line.visits]
    .sort((a, b) => a.startMs - b.startMs)
    .map((visit, index): Disc => {
      const label = labels[index] ?? { x: 0, lane: 0, date: '', time: '' };
      return {
        x: axis.x(visit.startMs),
        y: clinicY,
        state: visit.state,
        firm: visit.firm,
        againstWish: visit.againstWish,
        title: visit.title,
        label: { x: label.x, y: clinicY - 18 - LANE_PX * label.lane, date: label.date, time: label.time },
      };
    });
  const bars = placeBars(line, axis, labY);
  const barLanes = Math.max(
    1,
    ...bars.map((bar) => Math.round((bar.y - labY + BAR_PX / 2) / (BAR_PX + BAR_GAP_PX)) + 1),
  );
  return {
    heightPx: labY + barLanes * (BAR_PX + BAR_GAP_PX) + 4,
    clinicY,
    labY,
    track: track(line, axis, clinicY, labY),
    discs,
    bars,
  };
}

/** Date and time stand over their disc; where neighbours would collide, the later one goes a lane higher. */
function placeLabels(line: Line, axis: Axis): { x: number; lane: number; date: string; time: string }[] {
  const ends: number[] = [];
  return [...line.visits]
    .sort((a, b) => a.startMs - b.startMs)
    .map((visit) => {
      const date = axisDate(localDateOf(visit.startMs, line.zone));
      const halfPx = Math.max(LEAST_LABEL_PX, date.length * CHARACTER_PX) / 2;
      const x = Math.min(axis.x(visit.startMs), axis.widthPx - halfPx);
      const free = ends.findIndex((end) => end <= x - halfPx);
      const lane = free === -1 ? ends.length : free;
      ends[lane] = x + halfPx;
      return { x, lane, date, time: timeOfDay(visit.startMs, line.zone) };
    });
}

/** Laboratory steps as bars; steps that run at the same time (one per arch) stand below one another. */
function placeBars(line: Line, axis: Axis, labY: number): Bar[] {
  const ends: number[] = [];
  const tones = new Map<string, 0 | 1 | 2>();
  return [...line.bars]
    .sort((a, b) => a.startMs - b.startMs || a.endMs - b.endMs)
    .map((bar) => {
      const free = ends.findIndex((end) => end <= bar.startMs);
      const lane = free === -1 ? ends.length : free;
      ends[lane] = bar.endMs;
      const tone = tones.get(bar.title) ?? ((tones.size % 3) as 0 | 1 | 2);
      tones.set(bar.title, tone);
      const x = axis.x(bar.startMs);
      const widthPx = Math.max(5, axis.x(bar.endMs) - x - 1);
      return {
        x,
        y: labY - BAR_PX / 2 + lane * (BAR_PX + BAR_GAP_PX),
        widthPx,
        heightPx: BAR_PX,
        tone,
        state: bar.state,
        title: bar.title,
        text: bar.title.length * CHARACTER_PX + 10 <= widthPx ? bar.title : null,
      };
    });
}

interface Stop {
  ms: number;
  level: 'clinic' | 'lab';
  firm: boolean;
}

/** Where the work is at each moment; couriers are the slopes between the levels. */
function track(line: Line, axis: Axis, clinicY: number, labY: number): LineDrawing['track'] {
  const firmFrom = (ms: number): boolean => {
    const next = line.visits.filter((visit) => visit.startMs >= ms).sort((a, b) => a.startMs - b.startMs)[0];
    return next?.firm ?? true;
  };
  const stops: Stop[] = line.visits.map((visit) => ({ ms: visit.startMs, level: 'clinic', firm: visit.firm }));
  for (const { direction, departMs, arriveMs } of line.couriers) {
    const [from, to] = direction === 'to-lab' ? (['clinic', 'lab'] as const) : (['lab', 'clinic'] as const);
    stops.push(
      { ms: departMs, level: from, firm: firmFrom(departMs) },
      { ms: arriveMs, level: to, firm: firmFrom(arriveMs) },
    );
  }
  for (const bar of line.bars) {
    stops.push({ ms: bar.startMs, level: 'lab', firm: firmFrom(bar.startMs) });
    stops.push({ ms: bar.endMs, level: 'lab', firm: firmFrom(bar.endMs) });
  }
  stops.sort((a, b) => a.ms - b.ms);
  const pieces: { points: string[]; firm: boolean }[] = [];
  let last: string | null = null;
  for (const stop of stops) {
    const point = `${axis.x(stop.ms).toFixed(1)},${String(stop.level === 'clinic' ? clinicY : labY)}`;
    const current = pieces.at(-1);
    if (current?.firm === stop.firm) current.points.push(point);
    else pieces.push({ points: last === null ? [point] : [last, point], firm: stop.firm });
    last = point;
  }
  return pieces
    .filter((piece) => piece.points.length > 1)
    .map((piece) => ({ ...piece, points: piece.points.join(' ') }));
}
