import type { CaseView, OpenCase } from '@archwright/contracts';
import { appendCaseEvent, type TreatmentCase } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { CASE_IN_SCOPE, caseScope, requireCase } from './case-access.js';
import { caseTitles } from './case-titles.js';
import { loadChain } from './chain.js';
import { placedArches } from './placed.js';

type Linked = Pick<CaseView, 'parentCase' | 'followingCases'>;

/**
 * The case that a repair or reline follows, with the dentures that it is about in place.
 *
 * @throws {RecordNotFoundError} for a case that the actor may not see, or of another patient
 * @throws {WrongStateError} when a denture that is to be repaired has not been placed by it
 */
export async function requireParent(
  tx: EntityManager,
  actor: Actor,
  { parentCaseId, patientId, arches }: OpenCase,
): Promise<void> {
  if (parentCaseId === null) return;
  const parent = await requireCase(tx, actor, parentCaseId);
  if (parent.patientId !== patientId) throw new RecordNotFoundError('case of this patient', parentCaseId);
  const { chain, progress } = await loadChain(tx, parentCaseId);
  const placed = placedArches(chain, progress);
  if (arches.every(({ arch }) => placed.includes(arch))) return;
  const state = placed.length === 0 ? 'before placement' : `placed for the ${placed.join(' and ')} arch only`;
  throw new WrongStateError(`Case ${parent.number}`, state, 'a case that has placed the denture');
}

/** The history of the case before says what follows it. */
export async function noteFollowing(
  tx: EntityManager,
  actor: Actor,
  { parentCaseId, id, number }: Pick<TreatmentCase, 'parentCaseId' | 'id' | 'number'>,
  at: Date,
): Promise<void> {
  if (parentCaseId === null) return;
  const body = { followingCaseId: id, sentence: `Case ${number} follows this one.` };
  await appendCaseEvent(tx, { caseId: parentCaseId, kind: 'case-followed', body, actorId: actor.userId, at });
}

/** Both ends of the link, as far as the actor may see them. */
export async function linkedCases(
  tx: EntityManager,
  actor: Actor,
  { id, parentCaseId }: Pick<TreatmentCase, 'id' | 'parentCaseId'>,
): Promise<Linked> {
  const rows: Omit<CaseView['followingCases'][number], 'title'>[] = await tx.query(
    `SELECT c.id, c.number, c.state FROM treatment_case c
     WHERE (c.id = $3 OR c.parent_case_id = $4) AND ${CASE_IN_SCOPE} ORDER BY c.id`,
    [...caseScope(actor), parentCaseId, id],
  );
  const titles = await caseTitles(
    tx,
    rows.map((row) => row.id),
  );
  const linked = rows.map((row) => ({ ...row, title: titles.get(row.id) ?? '' }));
  return {
    parentCase: linked.find((each) => each.id === parentCaseId) ?? null,
    followingCases: linked.filter((each) => each.id !== parentCaseId),
  };
}
