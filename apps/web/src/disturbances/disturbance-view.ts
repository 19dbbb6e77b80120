import type { DisturbanceSubject, DisturbanceSubjects, DisturbanceView, EnterDisturbance } from '@archwright/contracts';
import { typedInstant } from '../change-visit/change-visit-view.js';
import { dateAndTime } from '../time/wording.js';
import { disturbanceWords as words } from '../words/disturbances.js';

export interface EntryDraft {
  /** Kind of thing and its id, as {@link subjectGroups} gives them. */
  subject: string;
  fromDay: string;
  fromTime: string;
  untilDay: string;
  untilTime: string;
  reason: string;
}

const keyOf = ({ what, id }: Pick<DisturbanceSubject, 'what' | 'id'>): string => `${what} ${id}`;

/** What may be chosen, kind by kind in the order of the words. */
export function subjectGroups({ items }: DisturbanceSubjects) {
  return Object.entries(words.enter.kinds).flatMap(([kind, group]) => {
    const own = items.filter((item) => item.kind === kind);
    const named = own.map((item) => ({
      value: keyOf(item),
      label: item.label === item.at ? item.label : words.enter.subjectAt(item.label, item.at),
    }));
    return named.length === 0 ? [] : [{ group, items: named }];
  });
}

interface EntryTyped {
  /** Null while something is wrong. */
  body: EnterDisturbance | null;
  wrong: Partial<Record<keyof typeof words.enter.wrong, string>>;
}

/** What to send, and what is wrong by field. Times are those of the place that the thing belongs to. */
export function toEntry(draft: EntryDraft, { items }: DisturbanceSubjects): EntryTyped {
  const subject = items.find((item) => keyOf(item) === draft.subject);
  const reason = draft.reason.trim();
  // Whatever it is, its day has to be read in some zone before it can be told that it is none.
  const zone = subject?.zone ?? 'UTC';
  const startsAt = typedInstant(draft.fromDay, draft.fromTime, zone);
  const endsAt = typedInstant(draft.untilDay, draft.untilTime, zone);
  const isAfter = endsAt !== null && (startsAt === null || endsAt > startsAt);
  const { wrong } = words.enter;
  const found = {
    ...(subject === undefined ? { subject: wrong.subject } : {}),
    ...(startsAt === null ? { from: wrong.from } : {}),
    ...(isAfter ? {} : { until: wrong.until }),
    ...(reason === '' ? { reason: wrong.reason } : {}),
  };
  if (subject === undefined || startsAt === null || endsAt === null || Object.keys(found).length > 0)
    return { body: null, wrong: found };
  return { body: { what: subject.what, id: subject.id, startsAt, endsAt, reason }, wrong: found };
}

export const isUndecided = ({ state }: DisturbanceView): boolean => state === 'open' || state === 'planned';

/** Without any repair. A closure that is in force is not taken back here. */
export function decisionsOn({
  isClosed,
}: Pick<DisturbanceView, 'isClosed'>): { decision: 'keep' | 'withdraw'; label: string }[] {
  if (isClosed) return [{ decision: 'keep', label: words.keepClosed }];
  return [
    { decision: 'keep', label: words.keep },
    { decision: 'withdraw', label: words.withdraw },
  ];
}

export const timeOf = ({ startsAt, endsAt, zone }: DisturbanceView, today: string): string =>
  words.time(dateAndTime(startsAt, zone, today), dateAndTime(endsAt, zone, today));

export interface AffectedRow {
  caseId: string;
  /** Empty for a case of other clinics. */
  patient: string;
  caseNumber: string;
  falls: string[];
}

/** Each case with what of it falls away. */
export function affectedRows({ affected }: DisturbanceView, today: string): AffectedRow[] {
  return affected.map(({ caseId, caseNumber, patientName, visits, labSteps }) => {
    const falls = visits.map(({ title, startsAt, clinicName, zone }) =>
      words.visit(title, dateAndTime(startsAt, zone, today), clinicName),
    );
    if (labSteps > 0) falls.push(words.work(labSteps));
    return { caseId, caseNumber, patient: patientName, falls: falls.length === 0 ? [words.way] : falls };
  });
}

/** What a proposal costs and leaves, one sentence each. */
export function costSentences(proposal: DisturbanceView['proposals'][number]): string[] {
  const { reach, movedVisits, leastMovedVisits, untouchedCases, ripples, left } = proposal;
  const calls = ripples.reduce((sum, ripple) => sum + ripple.calls.filter(({ byMail }) => !byMail).length, 0);
  return [
    words.reach[reach],
    ...(movedVisits > 0 ? [words.bound(movedVisits, leastMovedVisits)] : []),
    words.calls(calls),
    ...(untouchedCases > 0 ? [words.untouched(untouchedCases)] : []),
    ...(left.length > 0 ? [words.left(left.map(({ caseNumber }) => caseNumber))] : []),
  ];
}
