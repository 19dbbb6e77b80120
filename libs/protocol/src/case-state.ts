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

interface Effect<Action extends string> {
  readonly action: Action;
  /** The effect in words, for the person who is about to decide. */
  readonly sentence: string;
}

/** What a change of a case's state does elsewhere. */
export interface CaseStateEffects {
  readonly bookings: Effect<'keep' | 'plan' | 'release-future'>;
  readonly labWork: Effect<'keep' | 'plan' | 'finish-started' | 'stop-all'>;
  readonly objects: Effect<'keep' | 'store' | 'hand-over' | 'return-or-discard'>;
  readonly notices: Effect<'keep' | 'resume' | 'stop-and-say-so' | 'stop-silently'>;
  readonly recheck: readonly ResumeCheck[];
}

const EFFECTS: Readonly<Record<CaseState, Omit<CaseStateEffects, 'recheck'>>> = {
  enquiry: {
    bookings: { action: 'keep', sentence: 'Only the examination is booked.' },
    labWork: { action: 'keep', sentence: 'No laboratory work exists yet.' },
    objects: { action: 'keep', sentence: 'No objects exist yet.' },
    notices: { action: 'keep', sentence: 'Reminders for the examination stay.' },
  },
  open: {
    bookings: {
      action: 'plan',
      sentence: 'The remaining visits are planned; nothing is booked until an offer is confirmed.',
    },
    labWork: { action: 'plan', sentence: 'Laboratory steps are planned with the visits they serve.' },
    objects: { action: 'keep', sentence: 'Objects stay where they are; each use-by date is looked at.' },
    notices: { action: 'resume', sentence: 'Reminders are sent for booked visits.' },
  },
  paused: {
    bookings: {
      action: 'release-future',
      sentence: 'All future visits are cancelled and their times offered to others.',
    },
    labWork: { action: 'finish-started', sentence: 'Steps already started are finished; nothing new is started.' },
    objects: { action: 'store', sentence: 'Objects are stored with their use-by dates.' },
    notices: {
      action: 'stop-and-say-so',
      sentence: 'Reminders stop; the patient is told that the visits are cancelled.',
    },
  },
  transferred: {
    bookings: { action: 'release-future', sentence: 'All future visits here are cancelled.' },
    labWork: { action: 'finish-started', sentence: 'Steps already started are finished and sent to the new clinic.' },
    objects: { action: 'hand-over', sentence: 'Every object is listed, packed and handed over to the new clinic.' },
    notices: { action: 'stop-and-say-so', sentence: 'Reminders stop; the patient is told who goes on.' },
  },
  abandoned: {
    bookings: {
      action: 'release-future',
      sentence: 'All future visits are cancelled and their times offered to others.',
    },
    labWork: { action: 'stop-all', sentence: 'All laboratory work stops; places are freed.' },
    objects: {
      action: 'return-or-discard',
      sentence: 'The patient’s own dentures are returned; the rest is discarded after the storage time.',
    },
    notices: { action: 'stop-and-say-so', sentence: 'Reminders stop; the patient gets one confirmation.' },
  },
  closed: {
    bookings: { action: 'keep', sentence: 'Nothing is left to book; recalls stay due.' },
    labWork: { action: 'keep', sentence: 'No laboratory work is left.' },
    objects: {
      action: 'return-or-discard',
      sentence: 'Casts and trial dentures are discarded after the storage time.',
    },
    notices: { action: 'keep', sentence: 'Recall notices stay.' },
  },
  'ended-by-death': {
    bookings: { action: 'release-future', sentence: 'All visits are cancelled at once.' },
    labWork: { action: 'stop-all', sentence: 'All laboratory work stops at once; places are freed.' },
    objects: {
      action: 'return-or-discard',
      sentence: 'The patient’s own dentures are kept for the family; the rest is discarded after the storage time.',
    },
    notices: {
      action: 'stop-silently',
      sentence: 'Every reminder, recall and message stops at once; nothing is sent any more.',
    },
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
