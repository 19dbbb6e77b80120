import { positionOf } from '@archwright/protocol';
import { CheckVerdict, RemakeAlert, ReplanProposal, appendCaseEvent, enqueueOutbox, uuidv7 } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { StageRecord } from '../capture/stage-record.js';
import { decideBy } from './decide-by.js';
import { remakeOf, type Remake } from './remake.js';
import { tellAboutAlert } from './tell.js';

/** A failed check that sends the case back. */
export interface RaisedVerdict {
  readonly id: string;
  /** Null when no loop of a path answers it. */
  readonly trigger: string | null;
  readonly reason: string;
  /** Null: all arches of the stage. */
  readonly arch: 'upper' | 'lower' | null;
}

const UNDECIDED = In(['open', 'planned']);

/**
 * Raises one alert for the findings of a check: the one that goes back furthest leads. A stage has one undecided alert at
 * the most; it is widened when a later finding goes back further.
 */
export async function raiseAlert(
  tx: EntityManager,
  record: StageRecord,
  findings: readonly RaisedVerdict[],
  now: Date,
): Promise<void> {
  const { chain, progress, stage } = record;
  const [furthest] = findings
    .map((finding) => ({ finding, remake: remakeOfVerdict(record, finding) }))
    .sort((a, b) => positionOf(chain, a.remake.returnTo) - positionOf(chain, b.remake.returnTo));
  if (furthest === undefined) return;
  const { finding, remake } = furthest;
  const known = await tx.findOneBy(RemakeAlert, { stageId: stage.id, state: UNDECIDED });
  if (known === null) {
    await openAlert(tx, record, { remake, reason: finding.reason, verdictId: finding.id, raisedBy: null }, now);
    return;
  }
  const before = remakeOf(chain, progress, { trigger: known.trigger, at: stage.code, arches: known.arches });
  if (positionOf(chain, remake.returnTo) >= positionOf(chain, before.returnTo)) return;
  const change = { ...rowOf(remake), reason: finding.reason, checkVerdictId: finding.id, state: 'open' as const };
  await tx.update(RemakeAlert, { id: known.id }, { ...change, version: known.version + 1 });
  await askForProposal(tx, known.id, stage.organisationId, now);
}

function remakeOfVerdict({ chain, progress, stage }: StageRecord, { trigger, arch }: RaisedVerdict): Remake {
  const arches = arch === null ? stage.arches : [arch];
  return remakeOf(chain, progress, { trigger: trigger ?? 'clinical-finding', at: stage.code, arches });
}

interface NewAlert {
  readonly remake: Remake;
  readonly reason: string;
  readonly verdictId: string | null;
  readonly raisedBy: string | null;
}

/** Opens an alert, tells clinic and laboratory, and asks for a plan that repairs it. */
export async function openAlert(
  tx: EntityManager,
  record: StageRecord,
  { remake, reason, verdictId, raisedBy }: NewAlert,
  now: Date,
): Promise<string> {
  const { stage } = record;
  const id = uuidv7();
  await tx.insert(RemakeAlert, {
    ...rowOf(remake),
    id,
    caseId: stage.caseId,
    stageId: stage.id,
    checkVerdictId: verdictId,
    reason,
    state: 'open',
    decideBy: await decideBy(tx, record, remake, now),
    raisedAt: now,
    raisedBy,
  });
  const body = { alertId: id, stage: stage.code, trigger: remake.trigger, returnTo: remake.returnTo };
  await appendCaseEvent(tx, { caseId: stage.caseId, kind: 'remake-alert-raised', body, actorId: raisedBy, at: now });
  await askForProposal(tx, id, stage.organisationId, now);
  await tellAboutAlert(tx, record, { id, kind: 'remake-alert' }, now);
  return id;
}

const rowOf = ({ trigger, returnTo, arches, discards }: Remake) => ({
  trigger,
  returnToStage: returnTo,
  arches: [...arches],
  discards: [
    ...new Set(discards.map(({ title, arches: own }) => (own.length === 1 ? `${title}, ${own.join()}` : title))),
  ],
});

export async function askForProposal(
  tx: EntityManager,
  alertId: string,
  organisationId: string,
  now: Date,
): Promise<void> {
  await enqueueOutbox(tx, 'replan-case', { organisationId, alertId }, now);
}

/** A later check of the stage that no longer sends the case back takes back what a check had raised. */
export async function withdrawCorrectedAlerts(tx: EntityManager, { stage }: StageRecord, now: Date): Promise<void> {
  const raised = await tx.findBy(RemakeAlert, { stageId: stage.id, state: UNDECIDED });
  const verdicts = await tx.findBy(CheckVerdict, {
    id: In(raised.flatMap(({ checkVerdictId }) => checkVerdictId ?? [])),
  });
  for (const alert of raised.filter(({ checkVerdictId }) => verdicts.some(({ id }) => id === checkVerdictId))) {
    await tx.update(ReplanProposal, { alertId: alert.id, state: 'open' }, { state: 'superseded' });
    await tx.update(
      RemakeAlert,
      { id: alert.id },
      {
        state: 'dismissed',
        decidedAt: now,
        decisionReason: 'A later check at this visit found it corrected.',
        version: alert.version + 1,
      },
    );
    const body = { alertId: alert.id, stage: stage.code };
    await appendCaseEvent(tx, { caseId: stage.caseId, kind: 'remake-alert-yielded', body, actorId: null, at: now });
  }
}
