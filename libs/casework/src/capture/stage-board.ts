import type { DayQuery, StageBoard } from '@archwright/contracts';
import { addDays, startOfDayMs } from '@archwright/calendar';
import { Clinic } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { NotYoursError } from '../errors.js';
import { caseLine } from './case-line.js';
import { loadEvidence } from './gate-evidence.js';
import { stageGates } from './stage-gates.js';
import { loadStage } from './stage-record.js';
import { loadStageFacts } from './stage-standing.js';
import { standingOf } from './standing-of-stage.js';

type Card = StageBoard['cards'][number];

interface VisitRow {
  readonly appointmentId: string;
  readonly appointmentVersion: number;
  readonly appointmentState: string;
  readonly startsAt: Date;
  readonly zone: string;
  readonly stageId: string;
  readonly caseId: string;
  readonly patientName: string | null;
  readonly birthOn: string | null;
}

const VISITS = `
  SELECT a.id AS "appointmentId", a.version AS "appointmentVersion", a.state AS "appointmentState",
    a.starts_at AS "startsAt", l.zone, s.id AS "stageId", s.case_id AS "caseId",
    i.given_name || ' ' || i.family_name AS "patientName", i.birth_on::text AS "birthOn"
  FROM appointment a
  JOIN clinic l ON l.id = a.clinic_id
  JOIN appointment_stage x ON x.appointment_id = a.id
  JOIN stage s ON s.id = x.stage_id
  LEFT JOIN patient_identity i ON i.patient_id = a.patient_id
  WHERE a.clinic_id = $1 AND a.starts_at >= $2 AND a.starts_at < $3 AND ($4::uuid IS NULL OR a.clinician_id = $4)
    AND a.state IN ('booked', 'provisional', 'arrived', 'in-progress', 'completed')
  ORDER BY a.starts_at, a.id`;

/** The day's cases by stage: what may go on, what has to be done first, what a person has to decide. */
export async function viewStageBoard(
  tx: EntityManager,
  actor: Actor,
  { on, clinicId, clinicianId }: DayQuery,
  now: Date,
): Promise<StageBoard> {
  const clinics = await clinicsOf(tx, actor, clinicId);
  const cards: Card[] = [];
  for (const { id, zone } of clinics) {
    const day = [new Date(startOfDayMs(on, zone)), new Date(startOfDayMs(addDays(on, 1), zone))];
    const visits: VisitRow[] = await tx.query(VISITS, [id, ...day, clinicianId ?? null]);
    for (const visit of visits) cards.push(await cardOf(tx, actor, visit, now));
  }
  cards.sort((a, b) => a.startsAt.localeCompare(b.startsAt));
  return { on, clinicName: clinics.map(({ name }) => name).join(', '), sentence: sentenceOf(cards), cards };
}

/** The clinic asked for, else all of the actor's. */
async function clinicsOf(tx: EntityManager, actor: Actor, clinicId: string | undefined): Promise<Clinic[]> {
  const mayAll = actor.role === 'administrator';
  if (clinicId !== undefined && !mayAll && !actor.clinicIds.includes(clinicId)) {
    throw new NotYoursError('You do not work at this clinic.');
  }
  const ids = clinicId === undefined ? actor.clinicIds : [clinicId];
  return tx.find(Clinic, {
    where: mayAll && clinicId === undefined ? {} : { id: In([...ids]) },
    order: { name: 'ASC', id: 'ASC' },
  });
}

async function cardOf(tx: EntityManager, actor: Actor, visit: VisitRow, now: Date): Promise<Card> {
  const record = await loadStage(tx, actor, visit.stageId);
  const gates = stageGates(record.chain, record.stage.code, await loadEvidence(tx, record, now));
  const { verdict, reason } = standingOf(await loadStageFacts(tx, record, gates));
  return {
    appointmentId: visit.appointmentId,
    appointmentVersion: visit.appointmentVersion,
    appointmentState: visit.appointmentState,
    startsAt: visit.startsAt.toISOString(),
    zone: visit.zone,
    caseId: visit.caseId,
    caseNumber: record.treatmentCase.number,
    stageId: visit.stageId,
    stageCode: record.stage.code,
    title: record.part.title,
    patientName: visit.patientName ?? '(erased)',
    birthOn: visit.birthOn ?? '1900-01-01',
    verdict,
    reason,
    line: await caseLine(tx, record),
  };
}

function sentenceOf(cards: readonly Card[]): string {
  if (cards.length === 0) return 'No visits on this day.';
  const count = (verdict: Card['verdict']) => cards.filter((card) => card.verdict === verdict).length;
  const visits = cards.length === 1 ? '1 visit' : `${String(cards.length)} visits`;
  const parts = [
    `${String(count('may-go-on'))} may go on`,
    `${String(count('check-first'))} to check first`,
    `${String(count('decide'))} to decide`,
    `${String(count('not-ready'))} not ready`,
  ];
  return `${visits}: ${parts.filter((part) => !part.startsWith('0 ')).join(', ')}.`;
}
