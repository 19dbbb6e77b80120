import type { AppointmentView, EnterDisturbance } from '@archwright/contracts';
import { dayAfter, typedInstant } from '../change-visit/change-visit-view.js';
import { timeOfDay } from '../time/wording.js';
import { lostVisitWords as words } from '../words/lost.js';

export interface LostVisitDraft {
  day: string;
  time: string;
  reason: string;
}

type Visit = Pick<AppointmentView, 'id' | 'startsAt' | 'endsAt' | 'zone' | 'state'>;

/** Only a visit to come, or one that nobody came to, can fall away. */
export const canFallAway = ({ state }: Pick<Visit, 'state'>): boolean => state === 'booked' || state === 'missed';

/** The day after at the same time, but no past day; of a missed visit the reason is known. */
export const lostVisitDraft = ({ startsAt, zone, state }: Visit, today: string): LostVisitDraft => ({
  day: dayAfter(startsAt, zone, today),
  time: timeOfDay(startsAt, zone),
  reason: state === 'missed' ? words.didNotCome : '',
});

/** What to send; null while something is missing, or while the patient would come again before the visit is over. */
export function lostVisitBody(
  { day, time, reason }: LostVisitDraft,
  { id, startsAt, endsAt, zone }: Visit,
  nowMs: number,
): EnterDisturbance | null {
  const again = typedInstant(day, time, zone);
  if (again === null || reason.trim() === '') return null;
  const isAfter = Date.parse(again) >= Date.parse(endsAt) && Date.parse(again) > nowMs;
  return isAfter ? { what: 'visit', id, startsAt, endsAt: again, reason: reason.trim() } : null;
}
