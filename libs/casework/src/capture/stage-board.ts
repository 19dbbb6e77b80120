import type { DayQuery, StageBoard, Told } from '@archwright/contracts';
import { addDays, startOfDayMs } from '@archwright/calendar';
import { Clinic } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { NotYoursError } from '../errors.js';
import { inEnglish, tell, told } from '../tell.js';
import { caseLine } from './case-line.js';
import { evidenceOf, loadEvidenceRows, type EvidenceRows } from './gate-evidence.js';
import { stageGates } from './stage-gates.js';
import { loadStages, type StageRecord } from './stage-record.js';
import { factsOf, loadStandingRows, type StandingRows } from './stage-standing.js';
import { standingOf } from './standing-of-stage.js';
import { waitingDecisions } from './waiting-decisions.js';

type Card = StageBoard['cards'][number];

interface VisitRow {
  readonly appointmentId: string;
  readonly appointmentVersion: number;
  readonly appointmentState: Card['appointmentState'];
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
  FROM unnest($1::uuid[], $2::timestamptz[], $3::timestamptz[]) AS day (clinic_id, begins_at, ends_at)
  JOIN appointment a ON a.clinic_id = day.clinic_id AND a.starts_at >= day.begins_at AND a.starts_at < day.ends_at
  JOIN clinic l ON l.id = a.clinic_id
  JOIN appointment_stage x ON x.appointment_id = a.id
  JOIN stage s ON s.id = x.stage_id
  LEFT JOIN patient_identity i ON i.patient_id = a.patient_id
  WHERE ($4::uuid IS NULL OR a.clinician_id = $4)
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
  const visits: VisitRow[] = await tx.query(VISITS, [...daysOf(clinics, on), clinicianId ?? null]);
  const records = await loadStages(
    tx,
    actor,
    visits.map(({ stageId }) => stageId),
  );
  const seen = [...records.values()];
  const known = { evidence: await loadEvidenceRows(tx, seen), standing: await loadStandingRows(tx, seen), now };
  const cards = visits.flatMap((visit) => {
    const record = records.get(visit.stageId);
    return record === undefined ? [] : [cardOf(visit, record, known)];
  });
  return {
    on,
    clinicName: clinics.map(({ name }) => name).join(', '),
    ...tell(sentenceOf(cards)),
    waiting: await waitingDecisions(tx, actor),
    cards,
  };
}

/** Each clinic with the day as its own wall has it, column by column. */
function daysOf(clinics: readonly Clinic[], on: string): [string[], Date[], Date[]] {
  return [
    clinics.map(({ id }) => id),
    clinics.map(({ zone }) => new Date(startOfDayMs(on, zone))),
    clinics.map(({ zone }) => new Date(startOfDayMs(addDays(on, 1), zone))),
  ];
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

interface Known {
  readonly evidence: EvidenceRows;
  readonly standing: StandingRows;
  readonly now: Date;
}

function cardOf(visit: VisitRow, record: StageRecord, { evidence: rows, standing, now }: Known): Card {
  const evidence = evidenceOf(record, rows, now);
  const gates = stageGates(record.chain, record.stage.code, evidence);
  const { verdict, reason } = standingOf(factsOf(record, gates, evidence, standing));
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
    reason: inEnglish(reason),
    told: reason,
    line: caseLine(record, standing),
  };
}

const VERDICTS = ['may-go-on', 'check-first', 'decide', 'not-ready'] as const satisfies Card['verdict'][];

function sentenceOf(cards: readonly Card[]): Told {
  if (cards.length === 0) return told('day-empty');
  const list = VERDICTS.map((verdict) => ({
    code: `board-${verdict}` as const,
    values: { n: cards.filter((card) => card.verdict === verdict).length },
  })).filter(({ values }) => values.n > 0);
  return told('day', { visits: cards.length, parts: { list } });
}
