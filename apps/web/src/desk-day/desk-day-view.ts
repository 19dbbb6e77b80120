import type { AppointmentState, AppointmentView, DayBoard, VisitAction } from '@archwright/contracts';
import type { MarkShape } from '../look/marks.js';
import { birthDate, lengthOfTime, timeOfDay, zoneNote } from '../time/wording.js';
import { deskWords } from '../words/desk.js';
import { groupOf, type Grouping } from './day-groups.js';

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
  phone: string | null;
  /** What has to be ready: a room for a wheelchair, an interpreter, a companion who may be told. */
  needs: string[];
  caseId: string | null;
  caseNumber: string | null;
  title: string;
  clinician: string;
  chair: string;
  clinic: string;
  /** For whoever should have come and has not; null for everybody else. */
  late: string | null;
  state: AppointmentState;
  mark: MarkShape;
  actions: { action: Action; label: string }[];
  /** How the visit can be changed, in words; null when it can't. */
  change: string | null;
}

/** One part of the day: a clinic, a chair or a clinician. */
export interface DayPart {
  key: string;
  title: string;
  rows: DayRow[];
}

const ACTIONS: Record<AppointmentState, Action[]> = {
  held: [],
  provisional: ['arrive'],
  booked: ['arrive', 'miss'],
  arrived: ['start', 'miss', 'undo-arrival'],
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

/** Whoever was here and did not wait is to be called as well, but did not stay away. */
const labelOf = (action: Action, state: AppointmentState): string =>
  action === 'miss' && state === 'arrived' ? deskWords.leftUnseen : deskWords.action[action];

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
    phone: visit.phone,
    needs: deskWords.needs(visit.needs),
    caseId: visit.caseId,
    caseNumber: visit.caseNumber,
    title: visit.title,
    clinician: visit.clinicianName,
    chair: visit.place === 'clinic' ? visit.chairLabel : deskWords.place[visit.place],
    clinic: visit.clinicName,
    late: lateWords(visit, nowMs),
    state: visit.state,
    mark: MARK[visit.state],
    actions: ACTIONS[visit.state]
      .filter((action) => action !== 'miss' || hasBegun)
      .map((action) => ({ action, label: labelOf(action, visit.state) })),
    change: visit.caseId === null ? null : (CHANGE[visit.state] ?? null),
  };
}

const EXPECTED: readonly AppointmentState[] = ['booked', 'provisional'];
/** Nobody comes that late: what still stands there after the day is unsettled, not late. */
const LATEST_MINUTES = 12 * 60;

function lateWords({ state, startsAt }: AppointmentView, nowMs: number): string | null {
  const minutes = Math.floor((nowMs - Date.parse(startsAt)) / 60_000);
  const isLate = EXPECTED.includes(state) && minutes >= 1 && minutes < LATEST_MINUTES;
  return isLate ? deskWords.late(lengthOfTime(minutes)) : null;
}

/**
 * The day in its parts, these by name, visits by time.
 *
 * @param nowMs the service's clock
 */
export function shapeDay(board: DayBoard, by: Grouping, viewer: string, nowMs: number): DayPart[] {
  const parts = new Map<string, DayPart>();
  const inOrder = [...board.appointments].sort(
    (a, b) => a.startsAt.localeCompare(b.startsAt) || a.id.localeCompare(b.id),
  );
  for (const visit of inOrder) {
    const { key, title } = groupOf(visit, by);
    const part = parts.get(key) ?? { key, title, rows: [] };
    part.rows.push(row(visit, viewer, nowMs));
    parts.set(key, part);
  }
  return [...parts.values()].sort((a, b) => a.title.localeCompare(b.title) || a.key.localeCompare(b.key));
}
