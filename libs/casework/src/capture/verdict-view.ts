import type { VerdictView } from '@archwright/contracts';
import type { CheckVerdict } from '@archwright/records';
import { ruleOf } from './keep-verdicts.js';

/** One verdict with everything that a clinician needs to judge it. */
export const viewVerdict = (row: CheckVerdict): VerdictView => ({
  rule: ruleOf(row.rule),
  ruleVersion: row.ruleVersion,
  verdict: row.verdict,
  reason: row.reason,
  value: row.valueShown,
  limit: row.limitShown,
  source: row.source,
  standing: row.standing,
  action: row.action,
  caution: row.caution,
  at: row.decidedAt.toISOString(),
});
