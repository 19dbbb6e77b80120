import { valueInWords, type Verdict } from '@archwright/measures';
import { CheckVerdict, uuidv7 } from '@archwright/records';
import { In, IsNull, Not, type EntityManager } from 'typeorm';

/** A verdict as it was kept. */
export interface KeptVerdict {
  readonly id: string;
  readonly verdict: Verdict;
}

export interface Keeping {
  readonly captureId: string;
  readonly stageId: string;
  readonly at: Date;
}

/** What a verdict is about, beyond its arch: rules that judge several values say one thing of each. */
export const ruleKey = ({ rule, measurement, side, region }: Verdict): string =>
  [rule, measurement, side, region].filter((each) => each !== undefined).join('/');

/** The rule without what it was applied to. */
export const ruleOf = (key: string): string => key.split('/')[0] ?? key;

/** Later verdicts take the place of all earlier ones: each check reads everything that counts at the stage. */
export async function keepVerdicts(
  tx: EntityManager,
  keeping: Keeping,
  verdicts: readonly Verdict[],
): Promise<KeptVerdict[]> {
  const { stageId, captureId, at } = keeping;
  await tx.update(CheckVerdict, { stageId, captureId: Not(captureId), supersededAt: IsNull() }, { supersededAt: at });
  const kept: KeptVerdict[] = [];
  for (const verdict of verdicts) kept.push(await keepVerdict(tx, keeping, verdict));
  return kept;
}

export async function keepVerdict(
  tx: EntityManager,
  { captureId, stageId, at }: Keeping,
  verdict: Verdict,
): Promise<KeptVerdict> {
  const id = uuidv7();
  await tx.insert(CheckVerdict, { id, captureId, stageId, ...rowOf(verdict), decidedAt: at });
  return { id, verdict };
}

/** What a verdict says, as it is kept. */
export function rowOf(verdict: Verdict) {
  const { ruleVersion, arch = null, action, reason, source, standing, cautionText, limit } = verdict;
  return {
    rule: ruleKey(verdict),
    ruleVersion,
    arch,
    verdict: verdict.verdict,
    action,
    reason,
    valueShown: valueInWords(verdict),
    limitShown: limit,
    source,
    standing,
    caution: cautionText === '' ? null : cautionText,
  };
}

/** Verdicts in force at stages, the newest capture's. */
export function verdictsInForce(tx: EntityManager, stageIds: readonly string[]): Promise<CheckVerdict[]> {
  return tx.find(CheckVerdict, {
    where: { stageId: In([...stageIds]), supersededAt: IsNull() },
    order: { id: 'ASC' },
  });
}
