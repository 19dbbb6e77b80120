import type { CaseStateEffects, Said, StateEffectsQuery, ToldCode } from '@archwright/contracts';
import { changeOfCaseState } from '@archwright/protocol';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { tell, told } from '../tell.js';
import { requireCase } from './case-access.js';
import { requireClosable } from './closing.js';

/** What a case has to lose, counted. */
interface Extent {
  readonly visits: number;
  readonly plannedSteps: number;
  readonly startedSteps: number;
  readonly objects: number;
  readonly reminders: number;
}

/**
 * What changing the case's state would do, with what it would concern; nothing is changed.
 *
 * @throws {IllegalTransitionError} when that state can't follow
 * @throws {WrongStateError} when the case can't be closed yet
 */
export async function previewCaseState(
  tx: EntityManager,
  actor: Actor,
  caseId: string,
  { to }: StateEffectsQuery,
  now: Date,
): Promise<CaseStateEffects> {
  const treatmentCase = await requireCase(tx, actor, caseId);
  const { recheck } = changeOfCaseState(treatmentCase.state, to);
  if (to === 'closed') await requireClosable(tx, caseId, now);
  const extent = await extentOf(tx, caseId, now);
  const again = recheck.map((each) => told(`recheck-${each}`));
  return {
    bookings: [
      tell(told(`effect-${to}-bookings`)),
      ...counted('effect-visits', extent.visits),
      ...(again.length === 0 ? [] : [tell(told('effect-recheck', { recheck: { list: again } }))]),
    ],
    labWork: [
      tell(told(`effect-${to}-work`)),
      ...counted('effect-planned', extent.plannedSteps),
      ...counted('effect-started', extent.startedSteps),
    ],
    objects: [tell(told(`effect-${to}-objects`)), ...counted('effect-objects', extent.objects)],
    notices: [tell(told(`effect-${to}-notices`)), ...counted('effect-reminders', extent.reminders)],
  };
}

async function extentOf(tx: EntityManager, caseId: string, now: Date): Promise<Extent> {
  const [extent]: Extent[] = await tx.query(
    `WITH visit AS (
       SELECT DISTINCT a.id FROM appointment a JOIN appointment_stage s ON s.appointment_id = a.id JOIN stage g ON g.id = s.stage_id
       WHERE g.case_id = $1 AND a.starts_at > $2 AND a.state IN ('provisional', 'booked', 'arrived'))
     SELECT (SELECT count(*)::integer FROM visit) AS visits,
       (SELECT count(*)::integer FROM lab_step WHERE case_id = $1 AND state IN ('planned', 'ready')) AS "plannedSteps",
       (SELECT count(*)::integer FROM lab_step WHERE case_id = $1 AND state IN ('started', 'paused')) AS "startedSteps",
       (SELECT count(*)::integer FROM custody_object WHERE case_id = $1
         AND state IN ('in-use', 'in-transit', 'quarantined')) AS objects,
       (SELECT count(*)::integer FROM reminder WHERE state = 'scheduled'
         AND appointment_id IN (SELECT id FROM visit)) AS reminders`,
    [caseId, now],
  );
  if (extent === undefined) throw new Error('Counting returned no row.');
  return extent;
}

const counted = (code: ToldCode, n: number): Said[] => (n === 0 ? [] : [tell(told(code, { n }))]);
