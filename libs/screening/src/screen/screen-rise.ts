import { fisherUpperTail, type Count } from '../rates/fisher-tail.js';
import { requireBetween, requireWhole } from '../sample/sample.js';

export interface RiseQuestion {
  /** Cases of late. */
  readonly recent: Count;
  /** The cases before them. */
  readonly earlier: Count;
  /** How many of the recent ones no earlier look has seen. */
  readonly unseen: number;
}

export type RiseOutcome =
  /** Too few of late, or too few to compare them with. */
  | { readonly outcome: 'too-few'; readonly size: number; readonly needed: number }
  | {
      readonly outcome: 'fine' | 'stands-out';
      readonly share: number;
      readonly usual: number;
      /** Probability of so many events of late or more, if nothing has changed. */
      readonly tail: number;
    };

/** Below it an exact tail can hardly be small. Project default. */
export const FEWEST_RECENT = 20;
export const FEWEST_EARLIER = 40;

/**
 * Whether something happens more often of late than before, at one of many looks: steady shares give at most one false
 * alarm in `casesPerAlarm` cases, since each look may spend as much of it as it has new cases.
 *
 * @see {@link fisherUpperTail}
 */
export function screenRise({ recent, earlier, unseen }: RiseQuestion, casesPerAlarm: number): RiseOutcome {
  requireBetween('Rise', 'cases to a false alarm', casesPerAlarm, 1, 1e9);
  requireWhole('Rise', 'cases not seen before', unseen, 0, recent.size);
  if (earlier.size < FEWEST_EARLIER) return { outcome: 'too-few', size: earlier.size, needed: FEWEST_EARLIER };
  if (recent.size < FEWEST_RECENT) return { outcome: 'too-few', size: recent.size, needed: FEWEST_RECENT };
  const tail = fisherUpperTail(recent, earlier);
  return {
    outcome: tail < unseen / casesPerAlarm ? 'stands-out' : 'fine',
    share: recent.events / recent.size,
    usual: earlier.events / earlier.size,
    tail,
  };
}
