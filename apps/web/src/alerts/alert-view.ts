import type { RemakeAlertView } from '@archwright/contracts';
import { dateAndTime } from '../time/wording.js';
import { alertWords } from '../words/chair.js';

export interface ProposalRow {
  id: string;
  label: string;
  moved: number;
  least: string;
  otherCases: number;
  calls: number;
  /** Hash of the plan that accepting it applies: that of the case's own change. */
  planHash: string;
}

/** Proposals side by side, the fewest moved visits first, then the fewest other cases. */
export function proposalRows(alert: RemakeAlertView): ProposalRow[] {
  return alert.proposals
    .map((proposal) => ({
      id: proposal.id,
      label: proposal.label,
      moved: proposal.movedVisits,
      least: alertWords.least(proposal.leastMovedVisits),
      otherCases: proposal.otherCases,
      calls: proposal.ripples.reduce((sum, ripple) => sum + ripple.calls.filter(({ byMail }) => !byMail).length, 0),
      planHash:
        (proposal.ripples.find((ripple) => ripple.caseId === alert.caseId) ?? proposal.ripples[0])?.planHash ?? '',
    }))
    .sort((a, b) => a.moved - b.moved || a.otherCases - b.otherCases || a.calls - b.calls);
}

export function alertSentence(alert: RemakeAlertView, zone: string, today: string): string {
  if (alert.state === 'accepted') return alertWords.accepted;
  if (alert.state === 'dismissed') return alertWords.dismissed;
  return alert.decideBy ? alertWords.by(dateAndTime(alert.decideBy, zone, today)) : alertWords.byNone;
}

export const isUndecided = (alert: RemakeAlertView): boolean => alert.state === 'open' || alert.state === 'planned';
