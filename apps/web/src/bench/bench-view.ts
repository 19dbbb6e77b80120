import type { DispatchStep, DispatchView, LabStepAction, LabStepState, LoadView } from '@archwright/contracts';
import type { MarkShape } from '../look/marks.js';
import { axisDate, dateAndTime, lengthOfTime, longDate, timeOfDay } from '../time/wording.js';
import { localDateOf } from '../time/zone.js';
import { questionLines, type QuestionLines } from '../lab-questions/question-view.js';
import { benchWords } from '../words/bench.js';
import { archWords } from '../words/line.js';
import { lateWords } from '../words/lost.js';
import { lateStart, type LateStart } from './late-view.js';
import { STEP_MARK } from './step-mark.js';

/** Five classes by share of the open minutes; everything above the whole is its own class. */
export type LoadClass = 0 | 1 | 2 | 3 | 4 | 'over' | 'closed';

export interface LoadCell {
  on: string;
  booked: number;
  open: number;
  load: LoadClass;
  label: string;
}

export interface LoadRow {
  id: string;
  name: string;
  cells: LoadCell[];
}

/** @returns the class of a share: fifths of the open minutes, the whole still within the last */
export function loadClass(bookedMinutes: number, openMinutes: number): LoadClass {
  if (bookedMinutes > openMinutes) return 'over';
  if (openMinutes === 0) return 'closed';
  return Math.min(4, Math.floor((bookedMinutes / openMinutes) * 5)) as 0 | 1 | 2 | 3 | 4;
}

/** Days on which the laboratory is open, or booked although it is closed. Rest days are left out. */
function workingDays(load: LoadView): string[] {
  const works = new Set(
    load.workCentres.flatMap((centre) =>
      centre.days.filter((day) => day.openMinutes > 0 || day.bookedMinutes > 0).map((day) => day.on),
    ),
  );
  return load.days.filter((on) => works.has(on));
}

export const dayHeads = (load: LoadView): { on: string; label: string }[] =>
  workingDays(load).map((on) => ({ on, label: axisDate(on) }));

export function loadRows(load: LoadView): LoadRow[] {
  return load.workCentres.map((centre) => ({
    id: centre.id,
    name: centre.name,
    cells: workingDays(load).map((on) => {
      const day = centre.days.find((one) => one.on === on) ?? { bookedMinutes: 0, openMinutes: 0 };
      const level = loadClass(day.bookedMinutes, day.openMinutes);
      const labelled = level === 'over' ? benchWords.cellOver : benchWords.cell;
      return {
        on,
        booked: day.bookedMinutes,
        open: day.openMinutes,
        load: level,
        label: labelled(centre.name, axisDate(on), day.bookedMinutes, day.openMinutes),
      };
    }),
  }));
}

type Action = LabStepAction['action'] | 'late';

const ACTIONS: Record<LabStepState, Action[]> = {
  unplanned: [],
  planned: ['start', 'ask', 'reject', 'late'],
  ready: ['start', 'ask', 'reject', 'late'],
  started: ['finish', 'pause', 'ask', 'reject', 'late'],
  paused: ['start', 'ask', 'reject', 'late'],
  finished: [],
  rejected: [],
  discarded: [],
};

/** The figure by which the list is ordered, in front of each step. */
interface Lead {
  figure: string;
  word: string;
  isLate: boolean;
}

export interface StepRow {
  id: string;
  version: number;
  caseId: string;
  caseNumber: string;
  /** The step's title and arches. */
  title: string;
  lead: Lead;
  /** When, where, how long, due when. */
  facts: string[];
  state: LabStepState;
  mark: MarkShape;
  waitsFor: string | null;
  question: QuestionLines | null;
  /** Materials not to be used for this patient; null when there are none. */
  avoid: string | null;
  actions: Action[];
  /** What the bench has said of its delay; null when it has not. */
  late: string | null;
  lateStart: LateStart;
}

function leadOf({ state, question, slackMinutes }: DispatchStep): Lead {
  const word = (text: string): Lead => ({ figure: '', word: text, isLate: false });
  if (state === 'finished') return word(benchWords.state.finished);
  if (question?.answeredAt === null) return word(benchWords.clockStopped);
  if (slackMinutes === null) return word(benchWords.visitNotBooked);
  const length = lengthOfTime(slackMinutes);
  if (slackMinutes < 0) return { figure: '', word: benchWords.lateBy(length), isLate: true };
  return { figure: length, word: benchWords.toSpare, isLate: false };
}

/** The bench's name once, where the place's own does not say it. */
export function placeOf({ placeLabel, workCentre }: Pick<DispatchStep, 'placeLabel' | 'workCentre'>): string {
  if (placeLabel.startsWith(workCentre)) return placeLabel;
  return placeLabel === '' ? workCentre : benchWords.place(workCentre, placeLabel);
}

/** @param view the list in which it stands: a step of another day says its day */
export function stepRow(step: DispatchStep, view: Pick<DispatchView, 'on' | 'zone'>, today: string): StepRow {
  const isFromEarlier = localDateOf(Date.parse(step.startsAt), view.zone) !== view.on;
  const starts = isFromEarlier ? dateAndTime(step.startsAt, view.zone, today) : timeOfDay(step.startsAt, view.zone);
  return {
    id: step.id,
    version: step.version,
    caseId: step.caseId,
    caseNumber: step.caseNumber,
    title: benchWords.step(step.title, archWords(step.arches)),
    lead: leadOf(step),
    facts: [
      benchWords.planned(starts),
      placeOf(step),
      benchWords.handsOn(step.handsOnMinutes),
      ...(step.dueBackAt ? [benchWords.due(dateAndTime(step.dueBackAt, view.zone, today))] : []),
    ],
    state: step.state,
    mark: step.question?.answeredAt === null ? 'needs-person' : STEP_MARK[step.state],
    waitsFor: step.waitsFor,
    question: step.question ? questionLines(step.question, view.zone, today) : null,
    avoid: step.avoidMaterials.length === 0 ? null : benchWords.avoid(step.avoidMaterials),
    actions: actionsOf(step),
    late: step.lateUntil === null ? null : lateWords.said(dateAndTime(step.lateUntil, view.zone, today)),
    lateStart: lateStart(step, view.zone, today),
  };
}

/** What waits can't begin; what was asked or said to be late is not said again before the clinic has answered. */
function actionsOf({ state, waitsFor, question, lateUntil }: DispatchStep): Action[] {
  return ACTIONS[state].filter(
    (action) =>
      (action !== 'start' || waitsFor === null) &&
      (action !== 'ask' || question === null || question.answeredAt !== null) &&
      (action !== 'late' || lateUntil === null),
  );
}

/** The work of one day in the order in which the server wants it worked. */
export const dispatchRows = (view: DispatchView, today: string): StepRow[] =>
  view.steps.map((step) => stepRow(step, view, today));

export const workTitle = (centre: string | null, on: string, today: string): string =>
  benchWords.workTitle(centre ?? benchWords.everyCentre, longDate(on, today));
