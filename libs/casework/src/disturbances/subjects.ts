import type { DisturbanceSubject, DisturbanceSubjects } from '@archwright/contracts';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';
import { clinicScope } from '../patients/patient-access.js';

/**
 * What can be lost as a whole, with the clinics whose people may say so (null: everybody's, as what a laboratory has is),
 * and when it was taken out of use.
 */
const SUBJECTS = `
  SELECT 'resource' AS what, h.id, r.kind, h.label, c.name AS at, c.zone, ARRAY[c.id] AS clinics, r.retired_at
    FROM chair h JOIN resource r ON r.id = h.id JOIN clinic c ON c.id = h.clinic_id
  UNION ALL
  SELECT 'resource', k.id, r.kind, k.code, c.name, c.zone, ARRAY[c.id], r.retired_at
    FROM kit k JOIN resource r ON r.id = k.id JOIN clinic c ON c.id = k.clinic_id
  UNION ALL
  SELECT 'resource', p.id, p.role, p.name, coalesce(string_agg(c.name, ', ' ORDER BY c.name), ''),
      coalesce(min(c.zone), 'UTC'), array_remove(array_agg(c.id), NULL), r.retired_at
    FROM practitioner p JOIN resource r ON r.id = p.id LEFT JOIN practitioner_clinic w ON w.practitioner_id = p.id
    LEFT JOIN clinic c ON c.id = w.clinic_id GROUP BY p.id, p.role, p.name, r.retired_at
  UNION ALL
  SELECT 'resource', b.id, r.kind, w.name || ' ' || b.label, l.name, l.zone, NULL, r.retired_at
    FROM bench_place b JOIN resource r ON r.id = b.id JOIN work_centre w ON w.id = b.work_centre_id
    JOIN laboratory l ON l.id = w.laboratory_id
  UNION ALL SELECT 'clinic', c.id, 'clinic', c.name, c.name, c.zone, ARRAY[c.id], NULL FROM clinic c
  UNION ALL
  SELECT 'work-centre', w.id, 'work-centre', w.name, l.name, l.zone, NULL, NULL
    FROM work_centre w JOIN laboratory l ON l.id = w.laboratory_id
  UNION ALL SELECT 'laboratory', l.id, 'laboratory', l.name, l.name, l.zone, NULL, NULL FROM laboratory l
  UNION ALL
  SELECT 'courier', k.id, 'courier', k.name, c.name || ', ' || l.name, c.zone, ARRAY[c.id], k.retired_at
    FROM courier k JOIN clinic c ON c.id = k.clinic_id JOIN laboratory l ON l.id = k.laboratory_id`;

/** A visit or a piece of work, too; these are not chosen from a list. Work out of the plan is in no laboratory. */
const EVERYTHING = `${SUBJECTS}
  UNION ALL
  SELECT 'visit', a.id, 'visit', string_agg(DISTINCT t.number, ', '), c.name, c.zone, ARRAY[c.id], NULL
    FROM appointment a JOIN clinic c ON c.id = a.clinic_id JOIN appointment_stage x ON x.appointment_id = a.id
    JOIN stage s ON s.id = x.stage_id JOIN treatment_case t ON t.id = s.case_id GROUP BY a.id, c.id, c.name, c.zone
  UNION ALL
  SELECT 'lab-step', s.id, 'lab-step', t.number || ' ' || s.code, coalesce(l.name, ''), coalesce(l.zone, c.zone),
      t.clinic_ids, NULL
    FROM lab_step s JOIN treatment_case t ON t.id = s.case_id JOIN clinic c ON c.id = t.home_clinic_id
    LEFT JOIN laboratory l ON l.id = s.laboratory_id`;

const COLUMNS = 'subject (what, id, kind, label, at, zone, clinics, retired_at)';
const IN_SCOPE = '($1::uuid[] IS NULL OR clinics IS NULL OR clinics && $1::uuid[])';

/** What the actor may say has fallen away, by kind and name: of what is in use. */
export async function disturbanceSubjectsOf(tx: EntityManager, actor: Actor): Promise<DisturbanceSubjects> {
  const items: DisturbanceSubject[] = await tx.query(
    `SELECT what, id, kind, label, at, zone FROM (${SUBJECTS}) AS ${COLUMNS}
     WHERE retired_at IS NULL AND ${IN_SCOPE} ORDER BY kind, at, label, id`,
    [clinicScope(actor)],
  );
  return { items };
}

/** Whether a disturbance `d` is of something of the clinics `$1`; null: all are. */
export const IN_DISTURBANCE_SCOPE = `EXISTS (
  SELECT FROM (${EVERYTHING}) AS ${COLUMNS}
  WHERE id = coalesce(d.resource_id, d.clinic_id, d.work_centre_id, d.laboratory_id, d.courier_id, d.lab_step_id,
    d.appointment_id) AND ${IN_SCOPE})`;

export type NamedSubject = Pick<DisturbanceSubject, 'label' | 'zone'>;

/** @throws {RecordNotFoundError} for what is not there or not of the actor's clinics */
export async function requireSubject(
  tx: EntityManager,
  actor: Actor,
  { what, id }: { readonly what: string; readonly id: string },
): Promise<NamedSubject> {
  const [found]: NamedSubject[] = await tx.query(
    `SELECT label, zone FROM (${EVERYTHING}) AS ${COLUMNS}
     WHERE what = $2 AND id = $3 AND ${IN_SCOPE}`,
    [clinicScope(actor), what, id],
  );
  if (found === undefined) throw new RecordNotFoundError(what.replaceAll('-', ' '), id);
  return found;
}
