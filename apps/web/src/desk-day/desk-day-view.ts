import type { AppointmentState, AppointmentView, DayBoard, VisitAction } from '@archwright/contracts';
import type { MarkShape } from '../look/marks.js';
import { birthDate, timeOfDay, zoneNote } from '../time/wording.js';
import { deskWords } from '../words/desk.js';

type Action = VisitAction['action'];

export interface DayRow {
  id: string;
  version: number;
  time: string;
  until: string;
  zoneNote: string | null;
  patientName: string;
  patientId: string;
  birth: string;
  caseId: string | null;
  caseNumber: string | null;
  title: string;
  clinician: string;
  chair: string;
  state: AppointmentState;
  mark: MarkShape;
  actions: Action[];
  /** How the visit can be changed, in words; null when it can't. */
  change: string | null;
}

export interface ClinicDay {
  clinicId: string;
  clinicName: string;
  rows: DayRow[];
}

const ACTIONS: Record<AppointmentState, Action[]> = {
  held: [],
  provisional: ['arrive'],
  booked: ['arrive', 'miss'],
  arrived: ['start'],
  'in-progress': ['finish'],
  completed: [],
  cancelled: [],
  missed: [],
};

const MARK: Record<AppointmentState, MarkShape> = {
  held: 'to-come',
  provisional: 'to-come',
  booked: 'to-come',
  arrived: 'now',
  'in-progress': 'now',
  completed: 'done',
  cancelled: 'missed',
  missed: 'missed',
};

const CHANGE: Partial<Record<AppointmentState, string>> = {
  provisional: deskWords.change,
  booked: deskWords.change,
  missed: deskWords.planAnew,
};

function row(visit: AppointmentView, viewer: string, nowMs: number): DayRow {
  // Nobody misses a visit before it begins; until then it can be moved or cancelled.
  const hasBegun = Date.parse(visit.startsAt) <= nowMs;
  return {
    id: visit.id,
    version: visit.version,
    time: timeOfDay(visit.startsAt, visit.zone),
    until: timeOfDay(visit.endsAt, visit.zone),
    zoneNote: zoneNote(visit.startsAt, visit.zone, viewer),
    patientName: visit.patientName,
    patientId: visit.patientId,
    birth: birthDate(visit.birthOn),
    caseId: visit.caseId,
    caseNumber: visit.caseNumber,
    title: visit.title,
    clinician: visit.clinicianName,
    chair: visit.place === 'clinic' ? visit.chairLabel : deskWords.place[visit.place],
    state: visit.state,
    mark: MARK[visit.state],
    actions: ACTIONS[visit.state].filter((action) => action !== 'miss' || hasBegun),
    change: visit.caseId === null ? null : (CHANGE[visit.state] ?? null),
  };
}

/**
 * The day by clinic, clinics by name, visits by time.
 *
 * @param nowMs the service's clock
 */
export function shapeDay(board: DayBoard, viewer: string, nowMs: number): ClinicDay[] {
  const clinics = new Map<string, ClinicDay>();
  const inOrder = [...board.appointments].sort(
    (a, b) => a.startsAt.localeCompare(b.startsAt) || a.id.localeCompare(b.id),
  );
  for (const visit of inOrder) {
    const clinic = clinics.get(visit.clinicId) ?? { clinicId: visit.clinicId, clinicName: visit.clinicName, rows: [] };
    clinic.rows.push(row(visit, viewer, nowMs));
    clinics.set(visit.clinicId, clinic);
  }
  return [...clinics.values()].sort((a, b) => a.clinicName.localeCompare(b.clinicName));
}
