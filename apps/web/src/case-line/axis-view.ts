import { tickDate } from '../time/wording.js';
import { addDays, isoWeekday, localDateOf, startOfDayMs } from '../time/zone.js';

export interface Axis {
  widthPx: number;
  /** Weeks begin here, labelled. */
  ticks: { x: number; label: string }[];
  weekends: { x: number; widthPx: number }[];
  /** Position of an instant, in px from the left edge of the drawing. */
  x: (ms: number) => number;
}

/** Left of the axis stand the names of the levels. */
export const GUTTER_PX = 58;
const RIGHT_PX = 44;
const TICK_ROOM_PX = 58;

/**
 * One time axis for every line of a screen, so that they can be compared by eye.
 *
 * @param fromMs first instant to be shown
 * @param toMs last instant to be shown
 * @param zone whose days and weekends are meant
 */
export function makeAxis(fromMs: number, toMs: number, widthPx: number, zone: string): Axis {
  const firstDay = addDays(localDateOf(fromMs, zone), -1);
  const lastDay = addDays(localDateOf(toMs, zone), 2);
  const startMs = startOfDayMs(firstDay, zone);
  const endMs = startOfDayMs(lastDay, zone);
  const scale = (widthPx - GUTTER_PX - RIGHT_PX) / (endMs - startMs);
  const x = (ms: number): number => GUTTER_PX + (ms - startMs) * scale;

  const ticks: Axis['ticks'] = [];
  const weekends: Axis['weekends'] = [];
  const weekPx = 7 * 86_400_000 * scale;
  const everyWeeks = Math.max(1, Math.ceil(TICK_ROOM_PX / weekPx));
  let week = 0;
  for (let day = firstDay; day < lastDay; day = addDays(day, 1)) {
    const weekday = isoWeekday(day);
    if (weekday === 1) {
      if (week % everyWeeks === 0) ticks.push({ x: x(startOfDayMs(day, zone)), label: tickDate(day) });
      week += 1;
    }
    if (weekday === 6 || (weekday === 7 && day === firstDay)) {
      const end = addDays(day, weekday === 6 ? 2 : 1);
      const left = x(startOfDayMs(day, zone));
      weekends.push({ x: left, widthPx: x(Math.min(endMs, startOfDayMs(end, zone))) - left });
    }
  }
  return { widthPx, ticks, weekends, x };
}
