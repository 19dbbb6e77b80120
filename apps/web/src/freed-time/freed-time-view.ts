import {
  freedTimeQuery,
  type AppointmentView,
  type FreedTimeQuery,
  type FreedTimeTaker,
  type PracticeView,
} from '@archwright/contracts';
import { typedInstant } from '../change-visit/change-visit-view.js';
import { cliniciansOf } from '../open-case/open-case-view.js';
import { dateAndTime, shortDate, timeOfDay } from '../time/wording.js';
import { toldWords } from '../words/told.js';
import { localDateOf } from '../time/zone.js';
import { freedWords as words } from '../words/freed-time.js';

/** The freed time as it stands in the address. */
export interface FreedSearch {
  clinic?: string | undefined;
  clinician?: string | undefined;
  on?: string | undefined;
  /** Times of day on the clinic's wall. */
  starts?: string | undefined;
  ends?: string | undefined;
  /** The case whose visit left the time: it is not asked to come back. */
  left?: string | undefined;
}

const TIME = ['clinic', 'clinician', 'on', 'starts', 'ends'] as const;

/** The time that a visit leaves free when it goes elsewhere. */
export const freedBy = ({ clinicId, clinicianId, startsAt, endsAt, zone, caseId }: AppointmentView): FreedSearch => ({
  clinic: clinicId,
  clinician: clinicianId,
  on: localDateOf(Date.parse(startsAt), zone),
  starts: timeOfDay(startsAt, zone),
  ends: timeOfDay(endsAt, zone),
  ...(caseId === null ? {} : { left: caseId }),
});

type Wrong = Partial<Record<(typeof TIME)[number], string>>;

/** What to ask the service, null while something is missing or the times are the wrong way round, and what, by field. */
export function askedTime(
  practice: Pick<PracticeView, 'clinics'>,
  { clinic, clinician, on = '', starts = '', ends = '' }: FreedSearch,
): { query: FreedTimeQuery | null; wrong: Wrong } {
  const { need } = words;
  const zone = practice.clinics.find(({ id }) => id === clinic)?.zone;
  const instantOf = (time: string): string | null => (zone === undefined ? null : typedInstant(on, time, zone));
  const [startsAt, endsAt] = [instantOf(starts), instantOf(ends)];
  const hasDay = zone !== undefined && on !== '';
  const wrong: Wrong = {
    ...(zone === undefined ? { clinic: need.clinic } : {}),
    ...(clinician ? {} : { clinician: need.clinician }),
    ...(on === '' ? { on: need.day } : {}),
    ...(hasDay && startsAt === null ? { starts: need.from } : {}),
    ...(hasDay && (endsAt === null || (startsAt !== null && startsAt >= endsAt)) ? { ends: need.to } : {}),
  };
  const asked = freedTimeQuery.safeParse({ clinicId: clinic, clinicianId: clinician, startsAt, endsAt });
  return { query: Object.keys(wrong).length === 0 && asked.success ? asked.data : null, wrong };
}

/** Another clinic; a clinician who does not work there is not meant any more. */
export function chooseClinic(practice: PracticeView, typed: FreedSearch, clinic: string): FreedSearch {
  const worksThere = cliniciansOf(practice, [clinic]).some(({ value }) => value === typed.clinician);
  return { ...typed, clinic, clinician: worksThere ? typed.clinician : undefined };
}

/** What was typed, as it goes into the address: only the very time that a visit left was left by its case. */
export function askFor(typed: FreedSearch, search: FreedSearch): FreedSearch {
  const isSame = TIME.every((part) => typed[part] === search[part]);
  return { ...typed, left: isSame ? search.left : undefined };
}

export interface TakerRow {
  key: string;
  patient: string;
  phone: string | null;
  caseId: string;
  caseNumber: string;
  sentence: string;
  move: string;
  /** Null where no denture is placed any more. */
  placement: string | null;
}

export function takerRow(taker: FreedTimeTaker, zone: string, today: string): TakerRow {
  const { deliveryBefore, deliveryOn } = taker;
  const at = (instant: string): string => dateAndTime(instant, zone, today);
  return {
    key: taker.appointmentId,
    patient: taker.patientName,
    phone: taker.phone,
    caseId: taker.caseId,
    caseNumber: taker.caseNumber,
    sentence: toldWords(taker.told),
    move: words.move(at(taker.before), at(taker.startsAt)),
    placement:
      deliveryBefore === null || deliveryOn === null
        ? null
        : words.placement(shortDate(deliveryBefore, today), shortDate(deliveryOn, today)),
  };
}
