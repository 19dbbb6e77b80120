import type { EntityManager } from 'typeorm';
import { WrongStateError } from '../errors.js';
import { loadChain } from './chain.js';
import { placedArches } from './placed.js';

/**
 * A case is closed after its dentures are placed, when nothing of it is booked or under way any more.
 *
 * @throws {WrongStateError} naming what is left
 */
export async function requireClosable(tx: EntityManager, caseId: string, now: Date): Promise<void> {
  const { chain, progress, rows } = await loadChain(tx, caseId);
  const isPlaced = placedArches(chain, progress).length === chain.paths.length;
  if (!isPlaced)
    throw new WrongStateError(
      'The case',
      'not finished, its dentures are not placed',
      'closing after placement, or giving it up',
    );
  const underWay = rows.steps.filter(
    ({ state }) => state !== 'finished' && state !== 'discarded' && state !== 'unplanned',
  );
  const visits = await visitsToCome(tx, caseId, now);
  if (visits + underWay.length === 0) return;
  const left = `${String(visits)} visits and ${String(underWay.length)} laboratory steps are left`;
  throw new WrongStateError('The case', `not finished, ${left}`, 'closing when they are done or cancelled');
}

async function visitsToCome(tx: EntityManager, caseId: string, now: Date): Promise<number> {
  const [row]: { count: number }[] = await tx.query(
    `SELECT count(DISTINCT a.id)::integer AS count
     FROM appointment a JOIN appointment_stage s ON s.appointment_id = a.id JOIN stage g ON g.id = s.stage_id
     WHERE g.case_id = $1 AND (a.state IN ('arrived', 'in-progress')
       OR (a.starts_at > $2 AND a.state IN ('provisional', 'booked')))`,
    [caseId, now],
  );
  return row?.count ?? 0;
}
