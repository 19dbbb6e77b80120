import { type LabOrderDocument, type LabOrderPage, type LabOrderQuery, type LabOrderView } from '@archwright/contracts';
import { decodeCursor, pageOf } from '@archwright/platform';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { CASE_IN_SCOPE, caseScope } from '../cases/case-access.js';
import { RecordNotFoundError } from '../errors.js';
import { valuesOf } from '../lab/work-orders.js';

interface Row {
  readonly id: string;
  readonly version: number;
  readonly state: LabOrderView['state'];
  readonly caseNumber: string;
  readonly caseId: string | null;
  readonly laboratoryName: string | null;
  readonly sentAt: Date;
  readonly neededBy: Date;
  readonly promisedAt: Date | null;
  readonly declineReason: string | null;
  /** Written by `sendOrder` alone. */
  readonly order: LabOrderDocument;
}

/**
 * The practice's people see the orders of their own cases, the laboratory's those addressed to it: `$3` is the actor's
 * organisation, `$4` whether the actor works in a laboratory. The database hides every other.
 */
const ORDERS = `
  SELECT x.id, x.version, x.state, x.case_number AS "caseNumber", c.id AS "caseId", l.name AS "laboratoryName",
    x.created_at AS "sentAt", x.needed_by AS "neededBy", x.promised_at AS "promisedAt",
    x.decline_reason AS "declineReason", x.order_document AS "order"
  FROM lab_exchange x LEFT JOIN sent_order o ON o.id = x.id LEFT JOIN treatment_case c ON c.id = o.case_id
    LEFT JOIN laboratory l ON l.id = o.laboratory_id
  WHERE (x.laboratory_organisation_id = $3
    OR NOT $4::boolean AND x.practice_organisation_id = $3 AND c.id IS NOT NULL AND ${CASE_IN_SCOPE})`;

const scopeOf = (actor: Actor): unknown[] => [...caseScope(actor), actor.organisationId, actor.role === 'lab'];

/** @throws {RecordNotFoundError} for an order of others */
export async function viewOrder(tx: EntityManager, actor: Actor, orderId: string): Promise<LabOrderView> {
  const [row]: Row[] = await tx.query(`${ORDERS} AND x.id = $5`, [...scopeOf(actor), orderId]);
  if (row === undefined) throw new RecordNotFoundError('order', orderId);
  return viewOf(row);
}

/** The newest first. */
export async function listOrders(
  tx: EntityManager,
  actor: Actor,
  { state, stageId, cursor, limit }: LabOrderQuery,
): Promise<LabOrderPage> {
  const rows: Row[] = await tx.query(
    `${ORDERS} AND ($5::text IS NULL OR x.state = $5) AND ($6::uuid IS NULL OR x.id < $6)
       AND ($8::uuid IS NULL OR o.stage_id = $8) ORDER BY x.id DESC LIMIT $7`,
    [
      ...scopeOf(actor),
      state ?? null,
      cursor === undefined ? null : decodeCursor(cursor).id,
      limit + 1,
      stageId ?? null,
    ],
  );
  const { items, next } = pageOf(rows, limit, ({ id }) => ({ sortKey: '', id }));
  return { items: items.map(viewOf), next };
}

function viewOf(row: Row): LabOrderView {
  return {
    ...row,
    sentAt: row.sentAt.toISOString(),
    neededBy: row.neededBy.toISOString(),
    promisedAt: row.promisedAt?.toISOString() ?? null,
    sentence: sentenceOf(row),
    values: valuesOf(row.order.prescription),
  };
}

function sentenceOf({ state, neededBy, promisedAt, declineReason }: Row): string {
  switch (state) {
    case 'ordered':
      return `Waits for the laboratory's answer; needed by ${neededBy.toISOString()}.`;
    case 'accepted':
      return promisedAt !== null && promisedAt > neededBy
        ? `Accepted for ${promisedAt.toISOString()}, later than needed.`
        : `Accepted for ${promisedAt?.toISOString() ?? ''}.`;
    case 'declined':
      return `Declined: ${declineReason ?? ''}`;
    case 'withdrawn':
      return 'Withdrawn by the practice.';
    case 'finished':
      return 'Finished by the laboratory.';
  }
}
