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
  mayChange: boolean;
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

const CHANGEABLE: readonly AppointmentState[] = ['provisional', 'booked'];

function row(visit: AppointmentView, viewer: string): DayRow {
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
    actions: ACTIONS[visit.state],
    mayChange: visit.caseId !== null && CHANGEABLE.includes(visit.state),
  };
}

/** The day by clinic, clinics by name, visits by time. */
export function shapeDay(board: DayBoard, viewer: string): ClinicDay[] {
  const clinics = new Map<string, ClinicDay>();
  const inOrder = [...board.appointments].sort(
    (a, b) => a.startsAt.localeCompare(b.startsAt) || a.id.localeCompare(b.id),
  );
  for (const visit of inOrder) {
    const clinic = clinics.get(visit.clinicId) ?? { clinicId: visit.clinicId, clinicName: visit.clinicName, rows: [] };
    clinic.rows.push(row(visit, viewer));
    clinics.set(visit.clinicId, clinic);
  }
  return [...clinics.values()].sort((a, b) => a.clinicName.localeCompare(b.clinicName));
}
