import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { CASE_IN_SCOPE, caseScope } from '../cases/case-access.js';
import { loadChains } from '../cases/chain.js';
import type { FreedInterval } from './search-takers.js';

/** Cases looked at for one freed time, so that the answer comes while a person waits. Project default. */
const MOST_LOOKED_AT = 24;

/** An open case whose next visit after the freed time could lie in it by its length and the skills it needs. */
export interface Candidate {
  readonly caseId: string;
  readonly clinicIds: readonly string[];
}

/** Candidates to look at, those whose next visit is furthest away first, and how many are left out. */
export async function findCandidates(
  tx: EntityManager,
  actor: Actor,
  { clinicId, startMs, endMs }: FreedInterval,
  skills: readonly string[],
): Promise<{ readonly looked: readonly Candidate[]; readonly leftOut: number }> {
  const rows: { caseId: string; clinicIds: string[]; stage: string; startsAt: Date }[] = await tx.query(
    `SELECT DISTINCT ON (c.id) c.id AS "caseId", c.clinic_ids AS "clinicIds", s.code AS stage, a.starts_at AS "startsAt"
     FROM treatment_case c JOIN stage s ON s.case_id = c.id
     JOIN appointment_stage x ON x.stage_id = s.id JOIN appointment a ON a.id = x.appointment_id
     WHERE ${CASE_IN_SCOPE} AND c.state = 'open' AND $3 = ANY (c.clinic_ids) AND a.state = 'booked' AND a.starts_at > $4
     ORDER BY c.id, a.starts_at`,
    [...caseScope(actor), clinicId, new Date(startMs)],
  );
  const chains = await loadChains(
    tx,
    rows.map(({ caseId }) => caseId),
  );
  const able = rows
    .filter(({ caseId, stage: code }) => {
      const stage = chains.get(caseId)?.chain.stages.find((each) => each.code === code);
      if (stage === undefined) return false;
      const fits = stage.chairMinutes.typical * 60_000 <= endMs - startMs;
      return fits && stage.skills.every((skill) => skills.includes(skill));
    })
    .sort((a, b) => b.startsAt.getTime() - a.startsAt.getTime() || (a.caseId < b.caseId ? -1 : 1));
  return { looked: able.slice(0, MOST_LOOKED_AT), leftOut: Math.max(0, able.length - MOST_LOOKED_AT) };
}
