import type { AlternativesView, CaseView } from '@archwright/contracts';
import { dateAndTime } from '../time/wording.js';
import { addDays, localDateOf, offsetMs } from '../time/zone.js';
import { changeWords } from '../words/case.js';

/** Visits begin on the grid on which the practice's time is kept. */
const GRID_MINUTES = 5;

export interface VisitOfCase {
  title: string;
  startsAt: string;
  when: string;
  /** Missed: it can only be planned anew. */
  isMissed: boolean;
}

/** The visit an appointment stands for: one appointment may serve several stages. */
export function visitOf(view: CaseView, appointmentId: string, today: string): VisitOfCase | null {
  const stages = view.stages.filter((stage) => stage.appointmentId === appointmentId);
  const startsAt = stages[0]?.startsAt;
  if (!startsAt) return null;
  return {
    title: [...new Set(stages.map((stage) => stage.title))].join(' + '),
    startsAt,
    when: dateAndTime(startsAt, view.zone, today),
    isMissed: stages[0]?.appointmentState === 'missed',
  };
}

/** The day after a visit, but no past one: when somebody who can't come then is likely to be able to. */
export function dayAfter(startsAt: string, zone: string, today: string): string {
  const next = addDays(localDateOf(Date.parse(startsAt), zone), 1);
  return next < today ? today : next;
}

export const startChoices = (alternatives: AlternativesView, today: string): { value: string; label: string }[] =>
  alternatives.starts.map((start) => ({
    value: `${start.startsAt} ${start.clinicianId}`,
    label: changeWords.start(dateAndTime(start.startsAt, alternatives.zone, today), start.clinicianName),
  }));

/**
 * The instant of a wall-clock time that a person typed, in the clinic's zone. A time that the spring change skips is
 * taken with the offset before it, one that occurs twice is the first (RFC 5545, section 3.3.5). Null when it is no time
 * at which a visit could begin.
 */
export function typedInstant(date: string, time: string, zone: string): string | null {
  return Number(time.slice(3)) % GRID_MINUTES === 0 ? typedMinute(date, time, zone) : null;
}

/** As {@link typedInstant}, at any minute: for what has happened and is not booked. */
export function typedMinute(date: string, time: string, zone: string): string | null {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || !/^([01]\d|2[0-3]):[0-5]\d$/.test(time)) return null;
  const wall = Date.parse(`${date}T${time}:00Z`);
  const before = wall - offsetMs(wall - 86_400_000, zone);
  const after = wall - offsetMs(wall + 86_400_000, zone);
  const exact = [before, after].filter((ms) => ms + offsetMs(ms, zone) === wall);
  const chosen = exact.length > 0 ? Math.min(...exact) : before;
  return new Date(chosen).toISOString().replace('.000Z', 'Z');
}
