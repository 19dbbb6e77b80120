import type { CasePage, CaseQuery, LabCasePage } from '@archwright/contracts';
import { decodeCursor, pageOf } from '@archwright/platform';
import { TreatmentCase } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { searchRange } from '../patients/search-key.js';
import { CASE_IN_SCOPE, caseScope } from './case-access.js';
import { loadOverviews } from './case-overview.js';

interface Found {
  readonly id: string;
  readonly number: string;
}

/** Newest first. What was typed is the beginning of a case number or of any word of the patient's name. */
export async function listCases(tx: EntityManager, actor: Actor, query: CaseQuery, now: Date): Promise<CasePage> {
  const { items, next } = await findCases(tx, actor, query);
  return { items: (await overviewsOf(tx, items, now)).map(({ summary }) => summary), next };
}

/** The same for a laboratory: found by number only, shown without identity. */
export async function listLabCases(tx: EntityManager, actor: Actor, query: CaseQuery, now: Date): Promise<LabCasePage> {
  const { items, next } = await findCases(tx, actor, query);
  const overviews = await overviewsOf(tx, items, now);
  return {
    items: overviews.map(({ summary: { id, version, number, state, title, deliveryOn } }) => ({
      id,
      version,
      number,
      state,
      title,
      deliveryOn,
    })),
    next,
  };
}

/** Ids are made in the order of time, so that they also order the list. */
async function findCases(
  tx: EntityManager,
  actor: Actor,
  { q, state, cursor, limit }: CaseQuery,
): Promise<{ items: Found[]; next: string | null }> {
  const typed = searchRange(q ?? '');
  const byName =
    actor.role === 'lab'
      ? ''
      : `OR c.patient_id IN (
    SELECT patient_id FROM patient_name_key WHERE search_key >= $3 AND search_key < $4)`;
  const found: Found[] = await tx.query(
    `SELECT c.id, c.number FROM treatment_case c
     WHERE ${CASE_IN_SCOPE}
       AND ($3 = '' OR (c.number COLLATE "C" >= $3 AND c.number COLLATE "C" < $4) ${byName})
       AND ($5::text IS NULL OR c.state = $5)
       AND ($6::uuid IS NULL OR c.id < $6)
     ORDER BY c.id DESC LIMIT $7`,
    [
      ...caseScope(actor),
      typed.from,
      typed.until,
      state ?? null,
      cursor === undefined ? null : decodeCursor(cursor).id,
      limit + 1,
    ],
  );
  return pageOf(found, limit, ({ id, number }) => ({ sortKey: number, id }));
}

async function overviewsOf(tx: EntityManager, found: readonly Found[], now: Date) {
  const cases = await tx.find(TreatmentCase, {
    where: { id: In(found.map(({ id }) => id)) },
    order: { id: 'DESC' },
  });
  return loadOverviews(tx, cases, now);
}
