import type { RemakeAlertView } from '@archwright/contracts';
import { dateAndTime, shortDate } from '../time/wording.js';
import { alertWords } from '../words/chair.js';

export interface ProposalRow {
  id: string;
  label: string;
  moved: number;
  least: string;
  otherCases: number;
  calls: number;
  untouched: number;
  delivery: string | null;
  againstWishes: number;
  /** What it costs, where no table compares it with others. */
  sentence: string;
  /** Sent back to accept exactly what is shown, every case's part of it. */
  planHash: string;
}

/** Proposals side by side, the fewest moved visits first, then the fewest other cases. */
export function proposalRows(alert: RemakeAlertView, today: string): ProposalRow[] {
  return alert.proposals
    .map((proposal) => ({
      id: proposal.id,
      label: proposal.label,
      moved: proposal.movedVisits,
      least: alertWords.least(proposal.leastMovedVisits),
      otherCases: proposal.otherCases,
      calls: proposal.ripples.reduce((sum, ripple) => sum + ripple.calls.filter(({ byMail }) => !byMail).length, 0),
      untouched: proposal.ripples.reduce((sum, ripple) => sum + ripple.untouchedVisits, 0),
      delivery: deliveryOf(alert, proposal, today),
      againstWishes: proposal.ripples.flatMap(({ plan }) => plan.visits).filter(({ asWished }) => !asWished).length,
      sentence: alertWords.cost(proposal.movedVisits, proposal.leastMovedVisits, proposal.otherCases),
      planHash: proposal.planHash,
    }))
    .sort((a, b) => a.moved - b.moved || a.otherCases - b.otherCases || a.calls - b.calls);
}

/** The day on which the case's own denture is placed; null when the plan places none any more. */
function deliveryOf(
  { caseId }: RemakeAlertView,
  { ripples }: RemakeAlertView['proposals'][number],
  today: string,
): string | null {
  const on = ripples.find((ripple) => ripple.caseId === caseId)?.plan.deliveryOn ?? null;
  return on === null ? null : shortDate(on, today);
}

export function alertSentence(alert: RemakeAlertView, today: string): string {
  if (alert.state === 'accepted') return alertWords.accepted;
  if (alert.state === 'dismissed') return alertWords.dismissed;
  return alert.decideBy ? alertWords.by(dateAndTime(alert.decideBy, alert.zone, today)) : alertWords.byNone;
}
