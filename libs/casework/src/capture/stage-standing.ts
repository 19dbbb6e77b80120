import { Capture, FindingPause, RemakeAlert } from '@archwright/records';
import { In, IsNull, type EntityManager } from 'typeorm';
import { verdictsInForce } from './check-stage.js';
import type { StageGate } from './stage-gates.js';
import type { StageRecord } from './stage-record.js';
import type { StageFacts } from './standing-of-stage.js';

/** Everything that says whether a stage may go on. */
export async function loadStageFacts(
  tx: EntityManager,
  record: StageRecord,
  gates: readonly StageGate[],
): Promise<StageFacts> {
  const { stage } = record;
  const stageId = stage.id;
  const verdicts = await verdictsInForce(tx, [stageId]);
  const alert = await tx.findOneBy(RemakeAlert, { stageId, state: In(['open', 'planned']) });
  const pause = await tx.findOneBy(FindingPause, { stageId, state: 'open' });
  return {
    state: stage.state,
    checking: await tx.existsBy(Capture, { stageId, checkedAt: IsNull() }),
    gates,
    alert: alert?.reason ?? null,
    lateFinding: pause?.reason ?? null,
    failed: verdicts.filter(({ verdict }) => verdict === 'fail').map(({ reason }) => reason),
    notArrived: notArrived(record),
  };
}

/** Laboratory work for this stage that is not finished. */
function notArrived({ stage, chain, rows }: StageRecord): string[] {
  const open = rows.steps.filter(
    ({ beforeStage, state, arches }) =>
      beforeStage === stage.code &&
      state !== 'finished' &&
      state !== 'discarded' &&
      arches.some((arch) => stage.arches.includes(arch)),
  );
  const titles = open.map(({ code }) => chain.steps.find((step) => step.code === code)?.title ?? code);
  return [...new Set(titles)];
}
