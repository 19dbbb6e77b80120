import type { Arch, CaseView, ReminderView } from '@archwright/contracts';
import { isUndecided } from '../alerts/undecided.js';
import type { MarkShape } from '../look/marks.js';
import { dateAndTime, longDate, timeOfDay, zoneNote } from '../time/wording.js';
import { caseWords } from '../words/case.js';
import { archWords } from '../words/line.js';
import { enumerated } from '../words/plural.js';
import { toldWords } from '../words/told.js';

export interface CaseRow {
  key: string;
  kind: 'visit' | 'lab';
  what: string;
  detail: string;
  when: string;
  where: string;
  state: string;
  mark: MarkShape;
  /** Set when the visit can be moved or cancelled, or has to be planned anew. */
  change: { appointmentId: string; words: string } | null;
  stageId: string | null;
}

interface Clock {
  today: string;
  viewer: string;
}

const span = (startsAt: string | null, endsAt: string | null, zone: string, clock: Clock): string =>
  startsAt === null
    ? caseWords.notPlanned
    : [
        `${dateAndTime(startsAt, zone, clock.today)}${endsAt ? `–${timeOfDay(endsAt, zone)}` : ''}`,
        zoneNote(startsAt, zone, clock.viewer),
      ]
        .filter(Boolean)
        .join(' ');

/** Arches only where they are fewer than those of the case; the round only from the second on. */
function detailOf(part: { arches: readonly Arch[]; round: number }, view: CaseView): string {
  const arches = part.arches.length < view.arches.length ? archWords(part.arches) : '';
  const round = part.round > 1 ? caseWords.round(part.round) : '';
  return arches && round ? caseWords.detail(arches, round) : arches || round;
}

function stageRow(stage: CaseView['stages'][number], view: CaseView, clock: Clock): CaseRow {
  const alerting = view.alerts.some((alert) => alert.stage === stage.code && isUndecided(alert));
  const marks: Record<typeof stage.state, MarkShape> = {
    waiting: 'to-come',
    planned: 'to-come',
    ready: 'now',
    'in-progress': 'now',
    passed: 'done',
    repeated: 'done',
    dropped: 'missed',
  };
  const state = stage.appointmentState;
  const change =
    state === 'booked' || state === 'provisional' ? caseWords.change : state === 'missed' ? caseWords.planAnew : null;
  return {
    key: stage.id,
    kind: 'visit',
    what: stage.title,
    detail: detailOf(stage, view),
    when: span(stage.startsAt, stage.endsAt, view.zone, clock),
    where:
      stage.clinicName && stage.clinicianName
        ? caseWords.where(stage.clinicName, stage.clinicianName)
        : (stage.clinicName ?? stage.clinicianName ?? ''),
    state: enumerated([
      caseWords.stage[stage.state],
      ...(state === 'provisional' ? [caseWords.provisional] : state === 'missed' ? [caseWords.missed] : []),
      ...(alerting ? [caseWords.decide] : []),
    ]),
    mark: alerting ? 'needs-person' : state === 'missed' ? 'missed' : marks[stage.state],
    change: change && stage.appointmentId ? { appointmentId: stage.appointmentId, words: change } : null,
    stageId: stage.id,
  };
}

function stepRow(step: CaseView['labSteps'][number], view: CaseView, clock: Clock): CaseRow {
  const marks: Record<typeof step.state, MarkShape> = {
    unplanned: 'to-come',
    planned: 'to-come',
    ready: 'to-come',
    started: 'now',
    paused: 'now',
    finished: 'done',
    rejected: 'needs-person',
    discarded: 'missed',
  };
  return {
    key: step.id,
    kind: 'lab',
    what: step.title,
    detail: detailOf(step, view),
    when: step.startsAt === null ? caseWords.notPlanned : dateAndTime(step.startsAt, view.zone, clock.today),
    where: step.placeLabel ?? '',
    state: step.stateReason
      ? caseWords.stepFor(caseWords.step[step.state], step.stateReason)
      : caseWords.step[step.state],
    mark: marks[step.state],
    change: null,
    stageId: null,
  };
}

/** Stages in the order of the path, each followed by the laboratory steps that come after it. */
export function caseRows(view: CaseView, clock: Clock): CaseRow[] {
  const stages = [...view.stages].sort((a, b) => a.position - b.position || a.round - b.round);
  const goOf = new Map(view.labSteps.map((step) => [step.id, goBefore(step, stages)?.id]));
  return stages.flatMap((stage) => {
    const steps = view.labSteps
      .filter(({ id }) => goOf.get(id) === stage.id)
      .sort((a, b) => (a.startsAt ?? '9999').localeCompare(b.startsAt ?? '9999'));
    return [stageRow(stage, view, clock), ...steps.map((step) => stepRow(step, view, clock))];
  });
}

/** The go at a stage whose outcome a step works on: the last one before it, since a step that had not begun waits for the repetition. */
function goBefore(
  step: CaseView['labSteps'][number],
  stages: readonly CaseView['stages'][number][],
): CaseView['stages'][number] | undefined {
  const goes = stages.filter(({ code }) => code === step.afterStage);
  const { startsAt } = step;
  const earlier = goes.filter((go) => startsAt !== null && go.startsAt !== null && go.startsAt <= startsAt);
  return earlier.at(-1) ?? goes.find(({ round }) => round === step.round) ?? goes.at(-1);
}

export const deliverySentence = (view: CaseView, today: string): string =>
  view.deliveryOn ? caseWords.delivery(longDate(view.deliveryOn, today)) : caseWords.noDelivery;

export interface ReminderRow {
  id: string;
  visit: string;
  text: string;
  state: string;
}

const REMINDER_ORDER: readonly ReminderView['state'][] = ['failed', 'scheduled', 'sent', 'withdrawn'];

/** What went wrong first, then what is still to go out as it falls due, then what is over. */
export function reminderRows(items: readonly ReminderView[], view: CaseView, today: string): ReminderRow[] {
  const rank = ({ state }: ReminderView): number => REMINDER_ORDER.indexOf(state);
  return [...items]
    .sort((a, b) => rank(a) - rank(b) || a.dueAt.localeCompare(b.dueAt))
    .map((reminder) => ({
      id: reminder.id,
      visit: view.stages.find(({ appointmentId }) => appointmentId === reminder.appointmentId)?.title ?? '',
      text: caseWords.reminder(
        caseWords.channel[reminder.channel],
        dateAndTime(reminder.sentAt ?? reminder.dueAt, reminder.zone, today),
      ),
      state: caseWords.reminderState[reminder.state],
    }));
}

/** The case's history, the latest first, in words. */
export function historyRows(
  view: CaseView,
  today: string,
): { key: string; when: string; sentence: string; by: string | null }[] {
  // They come in the order in which they were written, which instants alone would not keep.
  return [...view.events].reverse().map(({ at, kind, told, by }, index) => ({
    key: `${at} ${kind} ${String(index)}`,
    when: dateAndTime(at, view.zone, today),
    sentence: toldWords(told),
    by,
  }));
}

/** What somebody other than the person at the screen did last to the case; null where only the service and they did. */
export function latestByOthers(view: CaseView, ownName: string): string | null {
  const latest = view.events.findLast(({ by }) => by !== null && by !== ownName);
  return latest ? caseWords.latest(latest.by ?? '', toldWords(latest.told)) : null;
}
