import type { DispatchStep, ReportLateStep } from '@archwright/contracts';
import { typedMinute } from '../change-visit/change-visit-view.js';
import { dateAndTime, timeOfDay } from '../time/wording.js';
import { addDays, localDateOf } from '../time/zone.js';
import { lateWords as words } from '../words/lost.js';

export interface LateDraft {
  day: string;
  time: string;
  reason: string;
}

/** What the form of a late step begins with, and what it is held against. */
export interface LateStart {
  zone: string;
  endsAt: string;
  planned: string;
  draft: LateDraft;
}

/** A day later, but no past day: the smallest delay that is worth telling in most laboratories. Project default. */
export function lateStart({ endsAt }: Pick<DispatchStep, 'endsAt'>, zone: string, today: string): LateStart {
  const next = addDays(localDateOf(Date.parse(endsAt), zone), 1);
  return {
    zone,
    endsAt,
    planned: words.planned(dateAndTime(endsAt, zone, today)),
    draft: { day: next < today ? today : next, time: timeOfDay(endsAt, zone), reason: '' },
  };
}

/** What to send; null while something is missing or is no delay. */
export function lateBody(
  { day, time, reason }: LateDraft,
  { zone, endsAt }: LateStart,
  nowMs: number,
): ReportLateStep | null {
  const readyAt = typedMinute(day, time, zone);
  if (readyAt === null || reason.trim() === '') return null;
  const isLate = Date.parse(readyAt) > Math.max(Date.parse(endsAt), nowMs);
  return isLate ? { readyAt, reason: reason.trim() } : null;
}
