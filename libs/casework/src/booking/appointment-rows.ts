import type { AppointmentView } from '@archwright/contracts';
import { Stage } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import { stageTitles } from './stage-titles.js';

type Instants = 'startsAt' | 'endsAt';

/** A visit with the names that go with it. */
export interface AppointmentRow extends Omit<AppointmentView, Instants | 'stages' | 'title'> {
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly stageIds: readonly string[];
}

/** Columns of a visit; the case is the one whose stages it serves, the first by number when it serves several. */
export const SELECT_APPOINTMENT = `
  SELECT a.id, a.version, c.id AS "caseId", c.number AS "caseNumber", a.patient_id AS "patientId",
    coalesce(i.given_name || ' ' || i.family_name, '') AS "patientName", coalesce(i.birth_on::text, '') AS "birthOn",
    i.phone, json_build_object('wheelchairRoom', pt.wheelchair_room, 'interpreter', pt.interpreter,
      'companion', CASE WHEN pt.companion_permitted THEN i.companion_name END) AS needs,
    a.clinic_id AS "clinicId", l.name AS "clinicName", l.zone, a.chair_id AS "chairId",
    coalesce(r.label, '') AS "chairLabel", a.clinician_id AS "clinicianId", p.name AS "clinicianName",
    a.starts_at AS "startsAt", a.ends_at AS "endsAt", a.state, coalesce(away.place_kind, 'clinic') AS place,
    CASE WHEN away.id IS NOT NULL THEN a.travel_before_minutes END AS "homeTravelMinutes",
    CASE WHEN away.id IS NOT NULL THEN i.address END AS address,
    CASE WHEN away.id IS NOT NULL THEN i.access_note END AS "accessNote",
    ARRAY(SELECT s.stage_id FROM appointment_stage s WHERE s.appointment_id = a.id) AS "stageIds"
  FROM appointment a
  JOIN clinic l ON l.id = a.clinic_id
  JOIN practitioner p ON p.id = a.clinician_id
  JOIN patient pt ON pt.id = a.patient_id
  LEFT JOIN chair r ON r.id = a.chair_id
  LEFT JOIN home_visit away ON away.appointment_id = a.id
  LEFT JOIN patient_identity i ON i.patient_id = a.patient_id
  LEFT JOIN LATERAL (
    SELECT t.id, t.number FROM appointment_stage s JOIN stage g ON g.id = s.stage_id JOIN treatment_case t ON t.id = g.case_id
    WHERE s.appointment_id = a.id ORDER BY t.number LIMIT 1) c ON true`;

/** Visits as the clinic sees them, in the order given. */
export async function toAppointmentViews(
  tx: EntityManager,
  rows: readonly AppointmentRow[],
): Promise<AppointmentView[]> {
  const stages = await tx.find(Stage, {
    where: { id: In(rows.flatMap(({ stageIds }) => stageIds)) },
    order: { position: 'ASC' },
  });
  const titles = await stageTitles(tx, [...new Set(stages.map(({ caseId }) => caseId))]);
  return rows.map(({ stageIds, startsAt, endsAt, ...row }) => {
    const own = stages.filter(({ id }) => stageIds.includes(id));
    return {
      ...row,
      stages: own.map(({ code }) => code),
      title: own.map(({ caseId, code }) => titles.get(caseId)?.get(code) ?? code).join(', '),
      startsAt: startsAt.toISOString(),
      endsAt: endsAt.toISOString(),
    };
  });
}
