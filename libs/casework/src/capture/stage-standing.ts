import type { GateEvidence } from '@archwright/protocol';
import { Capture, FindingPause, RemakeAlert, type CheckVerdict } from '@archwright/records';
import { In, IsNull, type EntityManager } from 'typeorm';
import { verdictsInForce } from './keep-verdicts.js';
import type { StageGate } from './stage-gates.js';
import type { StageRecord } from './stage-record.js';
import type { StageFacts } from './standing-of-stage.js';

/** What was found at some cases' stages and still waits for somebody, as rows. */
export interface StandingRows {
  readonly verdicts: readonly CheckVerdict[];
  /** Undecided alerts of the cases, whatever their stage. */
  readonly alerts: readonly RemakeAlert[];
  /** Late findings of the cases that nobody has answered. */
  readonly pauses: readonly FindingPause[];
  readonly unchecked: readonly Capture[];
}

/** In as many queries for many stages as for one. */
export async function loadStandingRows(tx: EntityManager, records: readonly StageRecord[]): Promise<StandingRows> {
  const stageIds = records.map(({ stage }) => stage.id);
  const caseId = In([...new Set(records.map(({ stage }) => stage.caseId))]);
  return {
    verdicts: await verdictsInForce(tx, stageIds),
    alerts: await tx.findBy(RemakeAlert, { caseId, state: In(['open', 'planned']) }),
    pauses: await tx.findBy(FindingPause, { caseId, state: 'open' }),
    unchecked: await tx.findBy(Capture, { stageId: In(stageIds), checkedAt: IsNull() }),
  };
}

/** Everything that says whether a stage may go on. */
export function factsOf(
  record: StageRecord,
  gates: readonly StageGate[],
  evidence: GateEvidence,
  rows: StandingRows,
): StageFacts {
  const { stage } = record;
  const own = <Row extends { stageId: string }>(all: readonly Row[]) => all.filter((row) => row.stageId === stage.id);
  const isFailed = ({ verdict }: CheckVerdict) => verdict === 'fail';
  return {
    state: stage.state,
    checking: own(rows.unchecked).length > 0,
    gates,
    alert: own(rows.alerts)[0]?.reason ?? null,
    lateFinding: own(rows.pauses)[0]?.reason ?? null,
    failed: own(rows.verdicts)
      .filter(isFailed)
      .map(({ reason }) => reason),
    ...fromLaboratory(record, evidence),
  };
}

/** The laboratory work for a stage: what is still to be finished, what is on its way, what is here. */
function fromLaboratory(
  { stage, chain, rows }: StageRecord,
  evidence: GateEvidence,
): Pick<StageFacts, 'unfinished' | 'onItsWay' | 'here'> {
  const concerns = ({ arches }: { readonly arches: readonly ('upper' | 'lower')[] }) =>
    arches.some((arch) => stage.arches.includes(arch));
  const open = rows.steps.filter(
    (row) => row.beforeStage === stage.code && row.state !== 'finished' && row.state !== 'discarded' && concerns(row),
  );
  const made = chain.objects.filter(
    (object) =>
      concerns(object) &&
      chain.steps.some(({ code, beforeStage }) => code === object.madeAt && beforeStage === stage.code),
  );
  const here = made.filter(({ code }) => evidence.objectsInClinic.includes(code));
  const onItsWay = made.filter((object) => !here.includes(object) && !open.some(({ code }) => code === object.madeAt));
  const titles = (list: readonly { readonly title: string }[]) => [...new Set(list.map(({ title }) => title))];
  return {
    unfinished: titles(
      open.map(({ code }) => ({ title: chain.steps.find((step) => step.code === code)?.title ?? code })),
    ),
    onItsWay: titles(onItsWay),
    here: titles(here),
  };
}
