import type { Change } from '@archwright/contracts';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';

/**
 * What a laboratory hears of, by kind, and whether a record `h.id` of that kind is work of its own: `$1` are the
 * laboratories of the person, `$2` their organisation. A kind that is not here is not heard.
 */
const HEARD: Readonly<Record<string, string>> = {
  case: 'SELECT FROM lab_step s WHERE s.case_id = h.id AND s.laboratory_id = ANY ($1)',
  'lab-step': 'SELECT FROM lab_step s WHERE s.id = h.id AND s.laboratory_id = ANY ($1)',
  'lab-question': `SELECT FROM lab_question q JOIN lab_step s ON s.id = q.lab_step_id
    WHERE q.id = h.id AND s.laboratory_id = ANY ($1)`,
  'remake-alert': `SELECT FROM remake_alert a JOIN lab_step s ON s.case_id = a.case_id
    WHERE a.id = h.id AND s.laboratory_id = ANY ($1)`,
  'custody-object': `SELECT FROM custody_object o WHERE o.id = h.id AND (o.laboratory_id = ANY ($1)
    OR EXISTS (SELECT FROM lab_step s WHERE s.case_id = o.case_id AND s.laboratory_id = ANY ($1)))`,
  'lab-order': 'SELECT FROM lab_exchange x WHERE x.id = h.id AND x.laboratory_organisation_id = $2',
  'workload-run': 'SELECT FROM workload_run r WHERE r.id = h.id AND r.laboratory_id = ANY ($1)',
  'workload-proposal': `SELECT FROM workload_proposal p JOIN workload_run r ON r.id = p.run_id
    WHERE p.id = h.id AND r.laboratory_id = ANY ($1)`,
};

/** Through these, work may come to a bench or leave it: a case that has left is not the laboratory's any more. */
const MOVES_WORK: ReadonlySet<string> = new Set(['case', 'laboratory', 'work-centre', 'courier', 'closure']);

/** Something about the benches may have changed, and no more than that. */
const NAMELESS: Change = { kind: 'work', id: null, actorId: null };

const OWN = Object.entries(HEARD)
  .map(([kind, own]) => `h.kind = '${kind}' AND EXISTS (${own})`)
  .join(' OR ');

/** The changes of a laboratory's own work; whatever else may move it is told once, without a name. */
export async function ownWork(tx: EntityManager, actor: Actor, changes: readonly Change[]): Promise<Change[]> {
  const rows: { place: number }[] = await tx.query(
    `SELECT h.place::integer AS place FROM unnest($3::text[], $4::uuid[]) WITH ORDINALITY AS h (kind, id, place) WHERE ${OWN}`,
    [actor.laboratoryIds, actor.organisationId, changes.map(({ kind }) => kind), changes.map(({ id }) => id)],
  );
  const places = new Set(rows.map(({ place }) => place));
  const isOwn = (_: Change, index: number): boolean => places.has(index + 1);
  const own = changes.filter(isOwn);
  const isMoved = changes.some((change, index) => !isOwn(change, index) && MOVES_WORK.has(change.kind));
  return isMoved ? [...own, NAMELESS] : own;
}
