import type { ObjectPage, ObjectQuery, ObjectView } from '@archwright/contracts';
import { decodeCursor, pageOf } from '@archwright/platform';
import type { CustodyObject } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { caseScope } from '../cases/case-access.js';
import { RecordNotFoundError } from '../errors.js';
import { disinfectionCaution } from './disinfection-caution.js';
import { notToBePacked, notToBeUsed } from './fit-for-use.js';
import { OBJECT_IN_SCOPE } from './object-access.js';

type Row = Pick<
  CustodyObject,
  | 'id'
  | 'version'
  | 'caseId'
  | 'code'
  | 'kind'
  | 'arch'
  | 'round'
  | 'state'
  | 'stateReason'
  | 'holder'
  | 'clinicId'
  | 'laboratoryId'
  | 'place'
  | 'useBy'
> & { readonly caseNumber: string; readonly disinfection: ObjectView['disinfection'] };

/** With the declaration that counts for the next dispatch: the last one since the object came to where it is. */
const OBJECTS = `
  SELECT o.id, o.version, o.case_id AS "caseId", c.number AS "caseNumber", o.code, o.kind, o.arch, o.round, o.state,
    o.state_reason AS "stateReason", o.holder, o.clinic_id AS "clinicId", o.laboratory_id AS "laboratoryId", o.place,
    o.use_by AS "useBy", d.disinfection
  FROM custody_object o JOIN treatment_case c ON c.id = o.case_id
  LEFT JOIN LATERAL (
    SELECT json_build_object('agent', r.agent, 'method', r.method, 'by', u.name,
      'at', to_char(r.disinfected_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')) AS disinfection
    FROM disinfection_record r JOIN user_account u ON u.id = r.recorded_by
    WHERE r.object_id = o.id AND (o.arrived_at IS NULL OR r.disinfected_at >= o.arrived_at)
    ORDER BY r.disinfected_at DESC LIMIT 1) d ON true
  WHERE ${OBJECT_IN_SCOPE}`;

/** @throws {RecordNotFoundError} for an object unknown here or out of the actor's sight */
export async function viewObject(tx: EntityManager, actor: Actor, objectId: string, now: Date): Promise<ObjectView> {
  const [row]: Row[] = await tx.query(`${OBJECTS} AND o.id = $3`, [...caseScope(actor), objectId]);
  if (row === undefined) throw new RecordNotFoundError('object', objectId);
  return viewOf(row, now);
}

/** Objects in the actor's sight, the newest first; the quarantined ones are those that wait for a person. */
export async function listObjects(
  tx: EntityManager,
  actor: Actor,
  { caseId, code, state, cursor, limit }: ObjectQuery,
  now: Date,
): Promise<ObjectPage> {
  const rows: Row[] = await tx.query(
    `${OBJECTS} AND ($3::uuid IS NULL OR o.case_id = $3) AND ($4::text IS NULL OR o.code = $4)
       AND ($5::text IS NULL OR o.state = $5) AND ($6::uuid IS NULL OR o.id < $6) ORDER BY o.id DESC LIMIT $7`,
    [
      ...caseScope(actor),
      caseId ?? null,
      code ?? null,
      state ?? null,
      cursor === undefined ? null : decodeCursor(cursor).id,
      limit + 1,
    ],
  );
  const { items, next } = pageOf(rows, limit, ({ id }) => ({ sortKey: '', id }));
  return { items: items.map((row) => viewOf(row, now)), next };
}

function viewOf(row: Row, now: Date): ObjectView {
  return {
    ...row,
    useBy: row.useBy?.toISOString() ?? null,
    notToBeUsed: notToBeUsed(row, now),
    notToBePacked: notToBePacked(row, row.disinfection !== null, now),
    caution: disinfectionCaution,
  };
}
