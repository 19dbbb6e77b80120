import type { ParcelPage, ParcelQuery, ParcelView } from '@archwright/contracts';
import { decodeCursor, pageOf } from '@archwright/platform';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { caseScope } from '../cases/case-access.js';
import { RecordNotFoundError } from '../errors.js';
import { disinfectionCaution } from './disinfection-caution.js';
import { PARCEL_IN_SCOPE } from './parcel-access.js';

type Instants = 'packedAt' | 'handedOverAt' | 'receivedAt' | 'reconciledAt';
type Row = Omit<ParcelView, Instants | 'sentence' | 'caution'> & {
  readonly packedAt: Date;
  readonly handedOverAt: Date | null;
  readonly receivedAt: Date | null;
  readonly reconciledAt: Date | null;
};

/** What was declared of an object: the last declaration before the parcel was packed. */
const PARCELS = `
  SELECT p.id, p.version, p.direction, p.state, p.clinic_id AS "clinicId", k.name AS "clinicName",
    p.laboratory_id AS "laboratoryId", l.name AS "laboratoryName", p.courier_leg_id AS "courierLegId", p.carrier,
    p.packed_at AS "packedAt", u.name AS "packedBy", p.handed_over_at AS "handedOverAt", p.received_at AS "receivedAt",
    p.reconciled_at AS "reconciledAt",
    coalesce((
      SELECT json_agg(json_build_object('id', o.id, 'caseId', o.case_id, 'caseNumber', c.number, 'code', o.code,
        'kind', o.kind, 'found', x.found, 'note', x.note,
        'declared', CASE WHEN x.found IS DISTINCT FROM 'unexpected' THEN d.declared END) ORDER BY o.code)
      FROM parcel_object x JOIN custody_object o ON o.id = x.object_id JOIN treatment_case c ON c.id = o.case_id
      LEFT JOIN LATERAL (
        SELECT r.agent || coalesce(', ' || r.method, '') || ', ' || to_char(r.disinfected_at AT TIME ZONE 'UTC', 'YYYY-MM-DD HH24:MI"Z"') AS declared
        FROM disinfection_record r WHERE r.object_id = o.id AND r.disinfected_at <= p.packed_at
        ORDER BY r.disinfected_at DESC LIMIT 1) d ON true
      WHERE x.parcel_id = p.id), '[]') AS objects
  FROM parcel p JOIN clinic k ON k.id = p.clinic_id JOIN laboratory l ON l.id = p.laboratory_id
    JOIN user_account u ON u.id = p.packed_by
  WHERE ${PARCEL_IN_SCOPE}`;

/** @throws {RecordNotFoundError} for a parcel unknown here or with neither end at the actor's */
export async function viewParcel(tx: EntityManager, actor: Actor, parcelId: string): Promise<ParcelView> {
  const [row]: Row[] = await tx.query(`${PARCELS} AND p.id = $3`, [...caseScope(actor), parcelId]);
  if (row === undefined) throw new RecordNotFoundError('parcel', parcelId);
  return viewOf(row);
}

/** Parcels from or to where the actor works, the newest first. */
export async function listParcels(
  tx: EntityManager,
  actor: Actor,
  { direction, state, caseId, cursor, limit }: ParcelQuery,
): Promise<ParcelPage> {
  const rows: Row[] = await tx.query(
    `${PARCELS} AND ($3::text IS NULL OR p.direction = $3) AND ($4::text IS NULL OR p.state = $4)
       AND ($5::uuid IS NULL OR EXISTS (SELECT FROM parcel_object x JOIN custody_object o ON o.id = x.object_id
         WHERE x.parcel_id = p.id AND o.case_id = $5))
       AND ($6::uuid IS NULL OR p.id < $6) ORDER BY p.id DESC LIMIT $7`,
    [
      ...caseScope(actor),
      direction ?? null,
      state ?? null,
      caseId ?? null,
      cursor === undefined ? null : decodeCursor(cursor).id,
      limit + 1,
    ],
  );
  const { items, next } = pageOf(rows, limit, ({ id }) => ({ sortKey: '', id }));
  return { items: items.map(viewOf), next };
}

function viewOf(row: Row): ParcelView {
  return {
    ...row,
    packedAt: row.packedAt.toISOString(),
    handedOverAt: row.handedOverAt?.toISOString() ?? null,
    receivedAt: row.receivedAt?.toISOString() ?? null,
    reconciledAt: row.reconciledAt?.toISOString() ?? null,
    sentence: sentenceOf(row),
    caution: disinfectionCaution,
  };
}

function sentenceOf({ direction, state, clinicName, laboratoryName, carrier, objects }: Row): string {
  const [from, to] = direction === 'to-lab' ? [clinicName, laboratoryName] : [laboratoryName, clinicName];
  const things = objects.length === 1 ? '1 object' : `${String(objects.length)} objects`;
  switch (state) {
    case 'packed':
      return `${things} packed at ${from} for ${to}.`;
    case 'handed-over':
      return `${things} on the way from ${from} to ${to} with ${carrier ?? 'the courier'}.`;
    case 'received':
      return `Arrived at ${to} from ${from}; ${things} to be checked.`;
    case 'reconciled': {
      const amiss = objects.filter(({ found }) => found !== 'present').length;
      return amiss === 0
        ? `${things} arrived complete at ${to}.`
        : `Checked at ${to}: ${String(amiss)} of ${things} amiss.`;
    }
  }
}
