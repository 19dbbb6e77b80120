import type { AppointmentView, DayBoard, DayQuery, Told } from '@archwright/contracts';
import { addDays, startOfDayMs } from '@archwright/calendar';
import { Clinic } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';
import { requireClinic } from '../planning/scope.js';
import { tell, told } from '../tell.js';
import { SELECT_APPOINTMENT, toAppointmentViews, type AppointmentRow } from './appointment-rows.js';

/** All visits of one local day at the actor's clinics, each day counted in its clinic's zone. */
export async function dayBoardOf(
  tx: EntityManager,
  actor: Actor,
  { on, clinicId, clinicianId }: DayQuery,
  now: Date,
): Promise<DayBoard> {
  if (clinicId !== undefined) requireClinic(actor, [clinicId], 'clinic', clinicId);
  const isEverywhere = actor.role === 'administrator';
  const wanted = clinicId !== undefined ? [clinicId] : isEverywhere ? null : actor.clinicIds;
  const clinics = await tx.findBy(Clinic, wanted === null ? {} : { id: In([...wanted]) });
  const rows: AppointmentRow[] = [];
  for (const { id, zone } of clinics) rows.push(...(await visitsOfDay(tx, { id, zone, on, clinicianId }, now)));
  rows.sort((a, b) => a.startsAt.getTime() - b.startsAt.getTime() || (a.id < b.id ? -1 : 1));
  const appointments = await toAppointmentViews(tx, rows);
  return { on, ...tell(sentenceOf(appointments)), appointments };
}

interface ClinicDay {
  readonly id: string;
  readonly zone: string;
  readonly on: string;
  readonly clinicianId: string | undefined;
}

/** Held visits stand on the board as long as their hold lasts. */
function visitsOfDay(
  tx: EntityManager,
  { id, zone, on, clinicianId }: ClinicDay,
  now: Date,
): Promise<AppointmentRow[]> {
  return tx.query(
    `${SELECT_APPOINTMENT} LEFT JOIN hold h ON h.id = a.hold_id
     WHERE a.clinic_id = $1 AND a.starts_at >= $2 AND a.starts_at < $3 AND ($4::uuid IS NULL OR a.clinician_id = $4)
       AND a.state <> 'cancelled' AND (a.state NOT IN ('held', 'provisional') OR (h.state = 'active' AND h.expires_at > $5))`,
    [id, new Date(startOfDayMs(on, zone)), new Date(startOfDayMs(addDays(on, 1), zone)), clinicianId ?? null, now],
  );
}

function sentenceOf(appointments: readonly AppointmentView[]): Told {
  if (appointments.length === 0) return told('day-empty');
  const count = (...states: AppointmentView['state'][]) =>
    appointments.filter(({ state }) => states.includes(state)).length;
  const parts = [
    { code: 'day-arrived' as const, values: { n: count('arrived') } },
    { code: 'day-in-progress' as const, values: { n: count('in-progress') } },
    { code: 'day-completed' as const, values: { n: count('completed') } },
    { code: 'day-missed' as const, values: { n: count('missed') } },
    { code: 'day-not-firm' as const, values: { n: count('held', 'provisional') } },
  ].filter(({ values }) => values.n > 0);
  return told('day', { visits: appointments.length, parts: parts.length === 0 ? null : { list: parts } });
}

/** @throws {RecordNotFoundError} for a visit that is unknown or at a clinic that is not the actor's */
export async function viewAppointment(
  tx: EntityManager,
  actor: Actor,
  appointmentId: string,
): Promise<AppointmentView> {
  const rows: AppointmentRow[] = await tx.query(`${SELECT_APPOINTMENT} WHERE a.id = $1`, [appointmentId]);
  const [view] = await toAppointmentViews(tx, rows);
  if (view === undefined) throw new RecordNotFoundError('appointment', appointmentId);
  requireClinic(actor, [view.clinicId], 'appointment', appointmentId);
  return view;
}
