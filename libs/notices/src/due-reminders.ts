import { addDays, subtractDuration, toInstantMs, toLocal } from '@archwright/calendar';
import { ReminderSettingError } from './errors.js';

const MINUTE_MS = 60_000;
/** A message moved to the evening leaves this long before the quiet time, so that a late worker does not run into it. Project default. */
const EVENING_MARGIN_MS = 15 * MINUTE_MS;

/**
 * 7 days, so that a freed slot can be refilled, and 48 hours: the practice's defaults, which it may change. Reminders
 * of either kind cut non-attendance by about a third, a day before as well as a week before (systematic review of 29
 * studies with 33 estimates); no study names these two lead times as best.
 */
export const DEFAULT_LEAD_TIMES: readonly string[] = ['P7D', 'PT48H'];

/** Local times between which nothing is sent; `from` may lie after `to` and then spans midnight. */
export interface QuietHours {
  readonly from: string;
  readonly to: string;
}

/** Project default, no source. */
export const DEFAULT_QUIET_HOURS: QuietHours = { from: '20:00', to: '08:00' };

export interface ReminderRequest {
  readonly visitStartsMs: number;
  /**
   * ISO 8601 durations, or exact minutes as numbers. Days are nominal and keep the clinic's wall time, hours are exact
   * (RFC 5545, section 3.3.6): before a clock change P2D and PT48H differ by an hour.
   */
  readonly leadTimes?: readonly (string | number)[] | undefined;
  /** Null sends at any hour. */
  readonly quietHours?: QuietHours | null | undefined;
  readonly patientZone: string;
  readonly clinicZone: string;
  readonly consents: readonly ('mail' | 'phone')[];
  /** False when no address is known. */
  readonly mailKnown: boolean;
  readonly nowMs: number;
}

export interface DueReminder {
  /** `phone` is a call task for the front desk: without consent to mail a person calls instead. */
  readonly channel: 'mail' | 'phone';
  /** Names the intent: one per visit, channel and lead time. A nominal day counts 1,440 minutes. */
  readonly leadMinutes: number;
  readonly dueAtMs: number;
}

/**
 * The reminders of one visit that lie ahead, earliest first.
 *
 * One that falls into the quiet hours waits for their end, unless the visit would have begun by then: it leaves on the
 * evening before instead. One that is already past is left out (the confirmation has just told the patient), and of
 * two that meet at one instant the nearer one to the visit stays.
 *
 * @throws {ReminderSettingError} when a lead time or a quiet hour cannot be followed
 * @throws {CalendarTextError} when a zone or a duration is not understood
 */
export function dueReminders({
  visitStartsMs,
  leadTimes = DEFAULT_LEAD_TIMES,
  quietHours = DEFAULT_QUIET_HOURS,
  patientZone,
  clinicZone,
  consents,
  mailKnown,
  nowMs,
}: ReminderRequest): DueReminder[] {
  for (const time of quietHours === null ? [] : [quietHours.from, quietHours.to]) {
    if (!/^([01]\d|2[0-3]):[0-5]\d$/.test(time))
      throw new ReminderSettingError('A quiet hour', time, 'a time such as 20:00');
  }
  const channel = consents.includes('mail') && mailKnown ? 'mail' : 'phone';
  const byInstant = new Map<number, DueReminder>();
  for (const leadTime of leadTimes) {
    const duration = typeof leadTime === 'number' ? `PT${String(leadTime)}M` : leadTime;
    const leadMinutes = -subtractDuration(0, 'UTC', duration) / MINUTE_MS;
    if (!Number.isInteger(leadMinutes) || leadMinutes < 1) {
      throw new ReminderSettingError('A lead time', String(leadTime), 'whole minutes from 1 on, such as P7D or PT48H');
    }
    const statedMs = subtractDuration(visitStartsMs, clinicZone, duration);
    const dueAtMs =
      quietHours === null ? statedMs : outsideQuietHours(statedMs, visitStartsMs, quietHours, patientZone);
    const known = byInstant.get(dueAtMs);
    if (dueAtMs <= nowMs || (known !== undefined && known.leadMinutes <= leadMinutes)) continue;
    byInstant.set(dueAtMs, { channel, leadMinutes, dueAtMs });
  }
  return [...byInstant.values()].sort((one, other) => one.dueAtMs - other.dueAtMs);
}

function outsideQuietHours(ms: number, visitStartsMs: number, { from, to }: QuietHours, zone: string): number {
  const [date = '', time = ''] = toLocal(ms, zone).split('T');
  const spansMidnight = from > to;
  const isQuiet = spansMidnight ? time >= from || time < to : time >= from && time < to;
  if (!isQuiet) return ms;
  const endsOn = spansMidnight && time >= from ? addDays(date, 1) : date;
  const morningMs = toInstantMs(`${endsOn}T${to}`, zone);
  if (morningMs < visitStartsMs) return morningMs;
  const beganOn = spansMidnight && time < to ? addDays(date, -1) : date;
  return toInstantMs(`${beganOn}T${from}`, zone) - EVENING_MARGIN_MS;
}
