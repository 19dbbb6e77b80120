import { localDate } from '@archwright/calendar';
import type { MaterialLotPage, MaterialLotQuery, MaterialLotView, RecordMaterialLot } from '@archwright/contracts';
import { decodeCursor, pageOf } from '@archwright/platform';
import { Laboratory, LabStep, MaterialLot, appendCaseEvent, recordAudit, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { CASE_IN_SCOPE, caseScope } from '../cases/case-access.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { requireLaboratory } from '../lab/bench-steps.js';

/**
 * Notes the lot of a material that goes into a case at a step, so that it is found again when its maker recalls it.
 *
 * @throws {WrongStateError} for a step that is not under way or done, and for a lot past its date
 */
export async function recordMaterialLot(
  tx: EntityManager,
  actor: Actor,
  stepId: string,
  { material, lot, expiresOn }: RecordMaterialLot,
  now: Date,
): Promise<MaterialLotView> {
  const recordedBy = personOf(actor, 'A lot is noted by the person who uses it.');
  const step = await tx.findOneBy(LabStep, { id: stepId });
  if (step?.laboratoryId == null) throw new RecordNotFoundError('laboratory step', stepId);
  const laboratory = await requireLaboratory(tx, actor, step.laboratoryId);
  if (step.state !== 'started' && step.state !== 'paused' && step.state !== 'finished')
    throw new WrongStateError('The step', step.state, 'a step that has begun');
  requireInDate(laboratory, { lot, expiresOn }, now);
  const { caseId } = step;
  const id = uuidv7();
  // The case is locked by its event; a lot may be noted twice when it is opened twice.
  const body = { labStepId: stepId, code: step.code, sentence: `${material}, lot ${lot}, went into the work.` };
  await appendCaseEvent(tx, { caseId, kind: 'material-lot-noted', body, actorId: recordedBy, at: now });
  await tx.insert(MaterialLot, {
    id,
    caseId,
    labStepId: stepId,
    material,
    lot,
    expiresOn,
    recordedAt: now,
    recordedBy,
  });
  await recordAudit(tx, {
    actorId: recordedBy,
    action: 'record-material-lot',
    subjectKind: 'lab-step',
    subjectId: stepId,
    details: { material, lot },
    at: now,
  });
  return viewLot(tx, actor, id);
}

/** By the laboratory's own calendar: a material may be used on its last day. */
function requireInDate({ zone }: Laboratory, { lot, expiresOn }: Omit<RecordMaterialLot, 'material'>, now: Date): void {
  const today = localDate(now.getTime(), zone);
  if (expiresOn !== null && expiresOn < today)
    throw new WrongStateError(`Lot ${lot}`, `past its date ${expiresOn}`, `a lot that is good until ${today} or later`);
}

type Row = Omit<MaterialLotView, 'recordedAt' | 'patientName'> & {
  readonly recordedAt: Date;
  readonly patientName: string | null;
};

const LOTS = `
  SELECT m.id, m.material, m.lot, m.expires_on::text AS "expiresOn", m.recorded_at AS "recordedAt", u.name AS "recordedBy",
    m.lab_step_id AS "labStepId", s.code AS step, coalesce(s.arches, '{}') AS arches, c.id AS "caseId",
    c.number AS "caseNumber", c.state AS "caseState", i.given_name || ' ' || i.family_name AS "patientName", i.phone
  FROM material_lot m JOIN treatment_case c ON c.id = m.case_id JOIN user_account u ON u.id = m.recorded_by
    LEFT JOIN lab_step s ON s.id = m.lab_step_id LEFT JOIN patient_identity i ON i.patient_id = c.patient_id
  WHERE ${CASE_IN_SCOPE}`;

async function viewLot(tx: EntityManager, actor: Actor, lotId: string): Promise<MaterialLotView> {
  const [row]: Row[] = await tx.query(`${LOTS} AND m.id = $3`, [...caseScope(actor), lotId]);
  if (row === undefined) throw new RecordNotFoundError('material lot', lotId);
  return viewOf(row, actor);
}

/** Where a lot went, or what went into a case; the newest first. Capitals and spaces around a lot don't tell lots apart. */
export async function findMaterialLots(
  tx: EntityManager,
  actor: Actor,
  { lot, material, caseId, cursor, limit }: MaterialLotQuery,
): Promise<MaterialLotPage> {
  const rows: Row[] = await tx.query(
    `${LOTS} AND ($3::text IS NULL OR lower(m.lot) = lower($3)) AND ($4::text IS NULL OR lower(m.material) = lower($4))
       AND ($5::uuid IS NULL OR m.case_id = $5) AND ($6::uuid IS NULL OR m.id < $6) ORDER BY m.id DESC LIMIT $7`,
    [
      ...caseScope(actor),
      lot ?? null,
      material ?? null,
      caseId ?? null,
      cursor === undefined ? null : decodeCursor(cursor).id,
      limit + 1,
    ],
  );
  const { items, next } = pageOf(rows, limit, ({ id }) => ({ sortKey: '', id }));
  return { items: items.map((row) => viewOf(row, actor)), next };
}

function viewOf(row: Row, { role }: Actor): MaterialLotView {
  const isLaboratory = role === 'lab';
  return {
    ...row,
    recordedAt: row.recordedAt.toISOString(),
    patientName: isLaboratory ? '' : (row.patientName ?? '(erased)'),
    phone: isLaboratory ? null : row.phone,
  };
}
