/** Visits that begin sooner stay where they are: their patients cannot be reached with certainty. Project default. */
const NOTICE_MS = 48 * 3_600_000;

/** From when on visits may be moved without asking whether the patient hears of it in time. */
export const movableFrom = (now: Date): Date => new Date(now.getTime() + NOTICE_MS);
