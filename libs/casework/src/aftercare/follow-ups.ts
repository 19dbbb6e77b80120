import { Organisation, Recall, Stage, TreatmentCase, uuidv7 } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { StageRecord } from '../capture/stage-record.js';
import { loadChain } from '../cases/chain.js';
import { checksAfter, nextRecall, type DueCheck } from './recall-rule.js';
import { clinicDay } from './treated-case.js';

/**
 * What follows from a stage that has passed: a placement makes the later checks due, a check that was due is done, and a
 * recall makes the next one due.
 */
export async function followUpStage(
  tx: EntityManager,
  { stage, chain, treatmentCase }: Pick<StageRecord, 'stage' | 'chain' | 'treatmentCase'>,
  now: Date,
): Promise<void> {
  const { caseId, code } = stage;
  const { settings } = await tx.findOneByOrFail(Organisation, { id: stage.organisationId });
  const { today } = await clinicDay(tx, treatmentCase, now);
  for (const check of checksAfter(chain, code, today, settings)) await keepDue(tx, caseId, check);
  const done = await tx.update(
    Recall,
    { caseId, kind: code, state: In(['due', 'booked']) },
    { state: 'done', version: () => 'version + 1' },
  );
  const next = (done.affected ?? 0) === 0 ? null : nextRecall(chain, code, today, settings);
  if (next === null) return;
  const round = stage.round + 1;
  const { position, arches } = stage;
  await tx.insert(Stage, { id: uuidv7(), caseId, code, position, round, arches, state: 'waiting' });
  await keepDue(tx, caseId, next);
}

/** After one that was declined or made without a visit: the next in the usual interval, at the same stage. */
export async function followUpWithoutVisit(tx: EntityManager, { caseId, kind, dueOn }: Recall): Promise<void> {
  const { organisationId } = await tx.findOneByOrFail(TreatmentCase, { id: caseId });
  const { settings } = await tx.findOneByOrFail(Organisation, { id: organisationId });
  const { chain } = await loadChain(tx, caseId);
  const next = nextRecall(chain, kind, dueOn, settings);
  if (next !== null) await keepDue(tx, caseId, next);
}

/** A denture that is placed anew puts off what is due and not booked; a booked check stands. */
async function keepDue(tx: EntityManager, caseId: string, { stage, dueOn }: DueCheck): Promise<void> {
  const waiting = await tx.findOneBy(Recall, { caseId, kind: stage, state: In(['due', 'booked']) });
  if (waiting?.state === 'booked') return;
  if (waiting === null) {
    await tx.query(
      `INSERT INTO recall (id, case_id, kind, due_on, state) VALUES ($1, $2, $3, $4, 'due')
       ON CONFLICT ON CONSTRAINT recall_once DO NOTHING`,
      [uuidv7(), caseId, stage, dueOn],
    );
  } else if (waiting.dueOn !== dueOn) {
    await tx.update(Recall, { id: waiting.id }, { dueOn, reason: null, version: waiting.version + 1 });
  }
  await tx.update(Stage, { caseId, code: stage, state: 'waiting' }, { dueOn });
}

/** Nobody is called in for a case that was given up. */
export async function withdrawRecalls(tx: EntityManager, caseId: string): Promise<void> {
  const withdrawn = { state: 'withdrawn', version: () => 'version + 1' } as const;
  await tx.update(Recall, { caseId, state: In(['due', 'booked']) }, withdrawn);
}
