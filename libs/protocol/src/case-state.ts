import { IllegalTransitionError } from './errors.js';

export type CaseState = 'enquiry' | 'open' | 'paused' | 'transferred' | 'abandoned' | 'closed' | 'ended-by-death';

const NEXT: Readonly<Record<CaseState, readonly CaseState[]>> = {
  enquiry: ['open', 'abandoned', 'ended-by-death'],
  open: ['paused', 'transferred', 'abandoned', 'closed', 'ended-by-death'],
  paused: ['open', 'transferred', 'abandoned', 'ended-by-death'],
  transferred: ['open', 'abandoned', 'ended-by-death'],
  abandoned: ['open', 'ended-by-death'],
  closed: ['ended-by-death'],
  'ended-by-death': [],
};

/** What must be looked at again before a case goes on after a stop. */
export type ResumeCheck = 'mucosa' | 'medicines' | 'consent' | 'age-of-impressions' | 'age-of-bases';
const RESUME_CHECKS: readonly ResumeCheck[] = ['mucosa', 'medicines', 'consent', 'age-of-impressions', 'age-of-bases'];

/** What a change of a case's state does elsewhere. */
export interface CaseStateEffects {
  readonly bookings: 'keep' | 'plan' | 'release-future';
  readonly labWork: 'keep' | 'plan' | 'finish-started' | 'stop-all';
  readonly objects: 'keep' | 'store' | 'hand-over' | 'return-or-discard';
  readonly notices: 'keep' | 'resume' | 'stop-and-say-so' | 'stop-silently';
  readonly recheck: readonly ResumeCheck[];
}

const EFFECTS: Readonly<Record<CaseState, Omit<CaseStateEffects, 'recheck'>>> = {
  enquiry: { bookings: 'keep', labWork: 'keep', objects: 'keep', notices: 'keep' },
  open: { bookings: 'plan', labWork: 'plan', objects: 'keep', notices: 'resume' },
  paused: { bookings: 'release-future', labWork: 'finish-started', objects: 'store', notices: 'stop-and-say-so' },
  transferred: {
    bookings: 'release-future',
    labWork: 'finish-started',
    objects: 'hand-over',
    notices: 'stop-and-say-so',
  },
  abandoned: {
    bookings: 'release-future',
    labWork: 'stop-all',
    objects: 'return-or-discard',
    notices: 'stop-and-say-so',
  },
  closed: { bookings: 'keep', labWork: 'keep', objects: 'return-or-discard', notices: 'keep' },
  'ended-by-death': {
    bookings: 'release-future',
    labWork: 'stop-all',
    objects: 'return-or-discard',
    notices: 'stop-silently',
  },
};

/** States a case may take from where it is. */
export function nextCaseStates(from: CaseState): readonly CaseState[] {
  return NEXT[from];
}

/**
 * What changing a case's state does to bookings, laboratory work, objects and notices, and what has to be looked at again
 * before it goes on.
 *
 * @throws {IllegalTransitionError} when `to` cannot follow `from`
 */
export function changeOfCaseState(from: CaseState, to: CaseState): CaseStateEffects {
  if (!NEXT[from].includes(to)) throw new IllegalTransitionError('case', from, to, NEXT[from]);
  const resumes = to === 'open' && from !== 'enquiry';
  return { ...EFFECTS[to], recheck: resumes ? RESUME_CHECKS : [] };
}
