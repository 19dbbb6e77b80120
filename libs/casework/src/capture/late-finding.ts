import { nextPointOfNoReturn } from '@archwright/protocol';
import { FindingPause, LabStep, UserAccount, appendCaseEvent, uuidv7 } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import { notifyColleagues } from '../reminders/colleague-notice.js';
import { raiseAlert } from '../remakes/raise-alert.js';
import { openReadyLabWork } from './lab-work.js';
import type { StageRecord } from './stage-record.js';
import { visitOfStage } from './stage-visit.js';

/** When nothing that cannot be undone has a time yet: common practice to settle a finding within a week, no source. */
const ANSWER_WITHIN_MS = 7 * 86_400_000;

interface LateFinding {
  readonly verdictId: string;
  readonly reason: string;
}

/**
 * A finding that comes after its visit never undoes the stage: it pauses the next thing that cannot be undone and asks
 * the clinician. When nothing of the kind is left, a person decides on an alert instead.
 */
export async function pauseForLateFinding(
  tx: EntityManager,
  record: StageRecord,
  { verdictId, reason }: LateFinding,
  now: Date,
): Promise<void> {
  const { stage, chain, progress, rows } = record;
  if (await tx.existsBy(FindingPause, { stageId: stage.id, state: 'open' })) return;
  const point = nextPointOfNoReturn(chain, progress);
  if (point === null) {
    await raiseAlert(tx, record, [{ id: verdictId, trigger: null, reason, arch: null }], now);
    return;
  }
  const step = rows.steps.find((row) => row.code === point.code && ['planned', 'ready'].includes(row.state));
  const paused = rows.stages.find((row) => row.code === point.code && row.state !== 'repeated');
  const visit = paused === undefined ? null : await visitOfStage(tx, paused.id);
  const startsAt = step?.startsAt ?? visit?.startsAt ?? null;
  const answerBy = startsAt !== null && startsAt > now ? startsAt : new Date(now.getTime() + ANSWER_WITHIN_MS);
  await tx.insert(FindingPause, {
    id: uuidv7(),
    caseId: stage.caseId,
    stageId: stage.id,
    checkVerdictId: verdictId,
    pointOfNoReturn: point.code,
    reason,
    answerBy,
    state: 'open',
    createdAt: now,
  });
  if (step?.state === 'ready') {
    await tx.update(LabStep, { id: step.id }, { state: 'planned', stateReason: reason, version: step.version + 1 });
  }
  const body = { stage: stage.code, pointOfNoReturn: point.code, answerBy: answerBy.toISOString() };
  await appendCaseEvent(tx, { caseId: stage.caseId, kind: 'point-of-no-return-paused', body, actorId: null, at: now });
  await askClinician(tx, record, now);
}

/** A later passed check takes an unanswered finding back. */
export async function yieldPauses(tx: EntityManager, record: StageRecord, now: Date): Promise<void> {
  const { stage } = record;
  const open = await tx.findBy(FindingPause, { stageId: stage.id, state: 'open' });
  for (const pause of open) {
    await tx.update(FindingPause, { id: pause.id }, { state: 'yielded', version: pause.version + 1 });
    const body = { stage: stage.code, pointOfNoReturn: pause.pointOfNoReturn };
    await appendCaseEvent(tx, { caseId: stage.caseId, kind: 'pause-yielded', body, actorId: null, at: now });
  }
  if (open.length > 0) await openReadyLabWork(tx, record, now);
}

/** A clinician's answer to a late finding: go on, with the reason, or go back. */
export async function answerPauses(
  tx: EntityManager,
  record: StageRecord,
  given: { readonly state: 'go-on' | 'return'; readonly answer: string; readonly answeredBy: string },
  now: Date,
): Promise<number> {
  const { stage } = record;
  const open = await tx.findBy(FindingPause, { stageId: stage.id, state: 'open' });
  for (const pause of open) {
    await tx.update(FindingPause, { id: pause.id }, { ...given, answeredAt: now, version: pause.version + 1 });
    const body = { stage: stage.code, pointOfNoReturn: pause.pointOfNoReturn, answer: given.state };
    await appendCaseEvent(tx, {
      caseId: stage.caseId,
      kind: 'late-finding-answered',
      body,
      actorId: given.answeredBy,
      at: now,
    });
  }
  if (open.length > 0 && given.state === 'go-on') await openReadyLabWork(tx, record, now);
  return open.length;
}

/** The clinician of the visit, else the case's own, is told; a practitioner without an account finds it on the board. */
async function askClinician(tx: EntityManager, { stage, treatmentCase }: StageRecord, now: Date): Promise<void> {
  const visit = await visitOfStage(tx, stage.id);
  const clinicians = [visit?.clinicianId, treatmentCase.clinicianId].filter((id) => typeof id === 'string');
  const people = await tx.findBy(UserAccount, { practitionerId: In(clinicians) });
  const person = people.find(({ practitionerId }) => practitionerId === clinicians[0]) ?? people[0];
  if (person === undefined) return;
  const about = { kind: 'late-finding', caseId: stage.caseId, alertId: null };
  const to = { recipient: 'clinician', userId: person.id } as const;
  await notifyColleagues(tx, stage.organisationId, about, to, now);
}
