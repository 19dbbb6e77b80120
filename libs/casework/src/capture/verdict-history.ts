import type { VerdictHistory } from '@archwright/contracts';
import { JUDGEMENT_NOTE } from '@archwright/measures';
import { CheckVerdict } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { ruleOf } from './keep-verdicts.js';
import { loadStage } from './stage-record.js';
import { viewVerdict } from './verdict-view.js';

/** Twenty rules, judged anew at ten saves: more is not looked at in one go. */
const MOST_SHOWN = 300;

/** What the checks said of a stage and what took its place. */
export async function viewVerdictHistory(tx: EntityManager, actor: Actor, stageId: string): Promise<VerdictHistory> {
  const { stage } = await loadStage(tx, actor, stageId);
  const rows = await tx.find(CheckVerdict, {
    where: { stageId: stage.id },
    order: { decidedAt: 'DESC', id: 'DESC' },
    take: MOST_SHOWN,
  });
  return {
    items: rows.map((row) => ({
      ...viewVerdict(row),
      about: row.rule
        .slice(ruleOf(row.rule).length + 1)
        .split('/')
        .filter(Boolean),
      arch: row.arch,
      supersededAt: row.supersededAt?.toISOString() ?? null,
    })),
    note: JUDGEMENT_NOTE,
  };
}
