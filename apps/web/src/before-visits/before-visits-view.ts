import type { ArrivalCheckView, RecallView, SessionView, TransferView } from '@archwright/contracts';
import { dateAndTime, shortDate } from '../time/wording.js';
import { addDays } from '../time/zone.js';
import { beforeVisitsWords, arrivalWords, recallWords, transferWords } from '../words/before-visits.js';
import { toldWords } from '../words/told.js';

/** How far ahead a check is offered for booking; recalls of a year need no more, common practice without a source. */
const RECALL_DAYS_AHEAD = 28;

export const recallsUntil = (today: string): string => addDays(today, RECALL_DAYS_AHEAD);

interface Row {
  id: string;
  version: number;
  caseId: string;
  caseNumber: string;
  patientName: string;
}

export interface ArrivalRow extends Row {
  appointmentId: string;
  visit: string;
  missing: string;
  reason: string | null;
}

/** The visit that comes first on top: its patient can be called for the shortest time. */
export const arrivalRows = (checks: readonly ArrivalCheckView[], today: string): ArrivalRow[] =>
  [...checks]
    .sort((one, other) => one.visitAt.localeCompare(other.visitAt))
    .map(
      ({
        id,
        version,
        caseId,
        caseNumber,
        patientName,
        appointmentId,
        clinicName,
        visitAt,
        zone,
        missing,
        reason,
      }) => ({
        id,
        version,
        caseId,
        caseNumber,
        patientName,
        appointmentId,
        visit: arrivalWords.visit(dateAndTime(visitAt, zone, today), clinicName),
        missing: arrivalWords.missing(missing),
        reason,
      }),
    );

export interface RecallRow extends Row {
  stage: string;
  title: string;
  phone: string | null;
  due: string;
  isOverdue: boolean;
}

/** As the server lists them: the longest due first. */
export const recallRows = (recalls: readonly RecallView[], today: string): RecallRow[] =>
  recalls.map(({ id, version, caseId, caseNumber, patientName, stage, title, phone, dueOn }) => ({
    id,
    version,
    caseId,
    caseNumber,
    patientName,
    stage,
    title,
    phone,
    due: (dueOn < today ? recallWords.overdue : recallWords.due)(shortDate(dueOn, today)),
    isOverdue: dueOn < today,
  }));

type TransferAnswer = 'accept' | 'decline' | 'withdraw';

export interface TransferRow extends Row {
  sentence: string;
  reason: string;
  goesAlong: string[];
  /** What this person's clinics may answer; none where it is another clinic's word. */
  answers: { key: TransferAnswer; label: string; then: string }[];
}

/** A practice outside has no sign-in here: its answer is noted by the clinic that asked. */
export const transferRows = (
  transfers: readonly TransferView[],
  { clinicIds }: Pick<SessionView, 'clinicIds'>,
): TransferRow[] =>
  transfers.map(({ id, version, caseId, caseNumber, patientName, told, reason, labWork, objects, ...way }) => {
    const words =
      way.toClinicId === null ? { ...transferWords.choices, ...transferWords.outside } : transferWords.choices;
    const may = (clinicId: string): boolean => clinicIds.includes(clinicId);
    const keys: TransferAnswer[] = [
      ...(may(way.toClinicId ?? way.fromClinicId) ? (['accept', 'decline'] as const) : []),
      ...(may(way.fromClinicId) ? (['withdraw'] as const) : []),
    ];
    return {
      id,
      version,
      caseId,
      caseNumber,
      patientName,
      sentence: toldWords(told),
      reason: transferWords.why(reason),
      goesAlong: [
        labWork.length > 0 ? transferWords.work(labWork.length) : transferWords.noWork,
        objects.length > 0 ? transferWords.objects(objects.map(({ code }) => code)) : transferWords.noObjects,
      ],
      answers: keys.map((key) => ({ key, ...words[key] })),
    };
  });

/** What waits for a person, in one sentence. */
export const beforeVisitsSentence = (arrivals: number, recalls: number, transfers: number): string =>
  arrivals + recalls + transfers === 0
    ? beforeVisitsWords.nothing
    : beforeVisitsWords.waiting(arrivals, recalls, transfers);
