import type { CaseState, ChangeCaseState } from '@archwright/contracts';
import { caseWords as words } from '../words/case.js';

/** What is typed; the state is empty until one is chosen. */
export interface StateDraft {
  to: CaseState | '';
  reason: string;
  reviewOn: string;
  /** Who goes on after a transfer: a clinic of the practice, or somebody else by name. */
  clinicId: string;
  outside: string;
}

export const EMPTY_CHANGE: StateDraft = { to: '', reason: '', reviewOn: '', clinicId: '', outside: '' };

/** @returns what to send, null while something is missing, and what is wrong by field */
export function readStateChange({ to, reason, reviewOn, clinicId, outside }: StateDraft): {
  body: ChangeCaseState | null;
  wrong: Partial<Record<keyof StateDraft, string>>;
} {
  const lacksReason = reason.trim() === '';
  const lacksTaker = to === 'transferred' && clinicId === '' && outside.trim() === '';
  const wrong = {
    ...(lacksReason ? { reason: words.reasonMissing } : {}),
    ...(lacksTaker ? { outside: words.takerMissing } : {}),
  };
  if (to === '' || lacksReason || lacksTaker) return { body: null, wrong };
  const taker = clinicId === '' ? { outsidePractice: outside.trim() } : { clinicId };
  return {
    body: {
      to,
      reason: reason.trim(),
      reviewOn: to === 'paused' && reviewOn !== '' ? reviewOn : null,
      ...(to === 'transferred' ? taker : {}),
    },
    wrong,
  };
}
