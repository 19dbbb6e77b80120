import type { Told, TransferPage, TransferQuery, TransferView } from '@archwright/contracts';
import { decodeCursor, pageOf } from '@archwright/platform';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';
import { clinicScope } from '../patients/patient-access.js';
import { tell, told } from '../tell.js';

type Row = Omit<TransferView, 'patientName' | 'proposedAt' | 'decidedAt' | 'sentence' | 'told' | 'labWork'> & {
  readonly patientName: string | null;
  readonly proposedAt: Date;
  readonly decidedAt: Date | null;
  readonly labWork: readonly (Omit<TransferView['labWork'][number], 'endsAt'> & { readonly endsAt: string | null })[];
};

/** Seen at both of its clinics, also when it was declined. `$1` are the actor's clinics, null for all; `$2` is now. */
const TRANSFERS = `
  SELECT t.id, t.version, t.state, t.case_id AS "caseId", c.number AS "caseNumber",
    i.given_name || ' ' || i.family_name AS "patientName", t.from_clinic_id AS "fromClinicId", f.name AS "fromClinicName",
    t.to_clinic_id AS "toClinicId", coalesce(k.name, t.to_name) AS "toName", t.reason,
    t.decision_reason AS "decisionReason", t.proposed_at AS "proposedAt", t.decided_at AS "decidedAt",
    (SELECT count(DISTINCT a.id)::integer FROM appointment a JOIN appointment_stage x ON x.appointment_id = a.id
       JOIN stage g ON g.id = x.stage_id
     WHERE g.case_id = c.id AND a.starts_at > $2 AND a.state IN ('booked', 'provisional')) AS "visitsToCome",
    coalesce((SELECT json_agg(json_build_object('code', s.code, 'state', s.state, 'endsAt', s.ends_at) ORDER BY s.ends_at, s.id)
       FROM lab_step s WHERE s.case_id = c.id AND s.state IN ('started', 'paused')), '[]') AS "labWork",
    coalesce((SELECT json_agg(json_build_object('id', o.id, 'code', o.code, 'kind', o.kind, 'state', o.state,
         'holder', o.holder, 'clinicId', o.clinic_id) ORDER BY o.code)
       FROM custody_object o WHERE o.case_id = c.id AND o.state NOT IN ('discarded', 'lost')), '[]') AS objects
  FROM transfer t JOIN treatment_case c ON c.id = t.case_id JOIN clinic f ON f.id = t.from_clinic_id
    LEFT JOIN clinic k ON k.id = t.to_clinic_id LEFT JOIN patient_identity i ON i.patient_id = c.patient_id
  WHERE ($1::uuid[] IS NULL OR t.from_clinic_id = ANY ($1) OR t.to_clinic_id = ANY ($1))`;

/** @throws {RecordNotFoundError} for a transfer between clinics of others */
export async function viewTransfer(
  tx: EntityManager,
  actor: Actor,
  transferId: string,
  now: Date,
): Promise<TransferView> {
  const [row]: Row[] = await tx.query(`${TRANSFERS} AND t.id = $3`, [clinicScope(actor), now, transferId]);
  if (row === undefined) throw new RecordNotFoundError('transfer', transferId);
  return viewOf(row);
}

/** The newest first. */
export async function listTransfers(
  tx: EntityManager,
  actor: Actor,
  { state, direction, cursor, limit }: TransferQuery,
  now: Date,
): Promise<TransferPage> {
  const rows: Row[] = await tx.query(
    `${TRANSFERS} AND ($3::text IS NULL OR t.state = $3)
       AND ($4::text IS DISTINCT FROM 'incoming' OR t.to_clinic_id = ANY ($5::uuid[]))
       AND ($4::text IS DISTINCT FROM 'outgoing' OR t.from_clinic_id = ANY ($5::uuid[]))
       AND ($6::uuid IS NULL OR t.id < $6) ORDER BY t.id DESC LIMIT $7`,
    [
      clinicScope(actor),
      now,
      state ?? null,
      direction ?? null,
      actor.clinicIds,
      cursor === undefined ? null : decodeCursor(cursor).id,
      limit + 1,
    ],
  );
  const { items, next } = pageOf(rows, limit, ({ id }) => ({ sortKey: '', id }));
  return { items: items.map(viewOf), next };
}

function viewOf(row: Row): TransferView {
  return {
    ...row,
    patientName: row.patientName ?? '(erased)',
    proposedAt: row.proposedAt.toISOString(),
    decidedAt: row.decidedAt?.toISOString() ?? null,
    labWork: row.labWork.map((step) => ({
      ...step,
      endsAt: step.endsAt === null ? null : new Date(step.endsAt).toISOString(),
    })),
    ...tell(toldOf(row)),
  };
}

function toldOf({ state, fromClinicName, fromClinicId, toName, toClinicId, objects }: Row): Told {
  const left = objects.filter(({ holder, clinicId }) => holder === 'clinic' && clinicId === fromClinicId).length;
  const isForwarding = state === 'accepted' && toClinicId !== null;
  return told('transfer', { from: fromClinicName, to: toName, state, left: isForwarding ? left : 0 });
}
