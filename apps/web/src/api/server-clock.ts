/** `Date` counts whole seconds, so its reading is on the average half a second behind. */
const HALF_SECOND_MS = 500;
/** Smaller differences between two readings are rounding and the way of the answer. */
const NOTICED_MS = 1_500;

let aheadMs = 0;

/**
 * Learns how far the service's clock is ahead of this machine's: holds and days are counted by the former, and neither a
 * desk whose clock is wrong nor a demonstration whose clock was moved on may show another time.
 *
 * @param date the `Date` field of an answer (RFC 9110, section 6.6.1)
 * @param nowMs the machine's clock when the answer came
 */
export function noteServerDate(date: string | null, nowMs: number): void {
  const readMs = Date.parse(date ?? '');
  if (Number.isNaN(readMs)) return;
  const seenMs = readMs + HALF_SECOND_MS - nowMs;
  if (Math.abs(seenMs - aheadMs) > NOTICED_MS) aheadMs = seenMs;
}

/** The service's clock, as far as it is known. */
export const serverMs = (nowMs: number): number => nowMs + aheadMs;
