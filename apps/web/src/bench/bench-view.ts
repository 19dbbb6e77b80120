import type { DispatchStep, DispatchView, LabStepState, LoadView } from '@archwright/contracts';
import type { MarkShape } from '../look/marks.js';
import { axisDate, dateAndTime, lengthOfTime, longDate, timeOfDay } from '../time/wording.js';
import { localDateOf } from '../time/zone.js';
import { benchWords } from '../words/bench.js';
import { archWords } from '../words/line.js';

/** Five classes by share of the open minutes; everything above the whole is its own class. */
export type LoadClass = 0 | 1 | 2 | 3 | 4 | 'over' | 'closed';

export interface LoadCell {
  on: string;
  booked: number;
  open: number;
  load: LoadClass;
  overBy: number;
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
      return {
        on,
        booked: day.bookedMinutes,
        open: day.openMinutes,
        load: loadClass(day.bookedMinutes, day.openMinutes),
        overBy: Math.max(0, day.bookedMinutes - day.openMinutes),
        label: benchWords.cell(centre.name, axisDate(on), day.bookedMinutes, day.openMinutes),
      };
    }),
  }));
}

type Action = 'start' | 'pause' | 'finish' | 'ask' | 'reject';

const ACTIONS: Record<LabStepState, Action[]> = {
  unplanned: [],
  planned: ['start', 'ask', 'reject'],
  ready: ['start', 'ask', 'reject'],
  started: ['finish', 'pause', 'ask', 'reject'],
  paused: ['start', 'ask', 'reject'],
  finished: [],
  rejected: [],
  discarded: [],
};

const MARK: Record<LabStepState, MarkShape> = {
  unplanned: 'to-come',
  planned: 'to-come',
  ready: 'to-come',
  started: 'now',
  paused: 'now',
  finished: 'done',
  rejected: 'needs-person',
  discarded: 'missed',
};

export interface StepRow {
  id: string;
  version: number;
  caseId: string;
  time: string;
  caseNumber: string;
  title: string;
  arches: string;
  centre: string;
  place: string;
  minutes: string;
  due: string | null;
  slack: string | null;
  isLate: boolean;
  state: LabStepState;
  mark: MarkShape;
  waitsFor: string | null;
  openQuestion: string | null;
  actions: Action[];
}

function slackWords(minutes: number | null): string | null {
  if (minutes === null) return null;
  return minutes < 0 ? benchWords.late(lengthOfTime(minutes)) : benchWords.slack(lengthOfTime(minutes));
}

function stepRow(step: DispatchStep, view: DispatchView, today: string): StepRow {
  const startedEarlier = localDateOf(Date.parse(step.startsAt), view.zone) !== view.on;
  return {
    id: step.id,
    version: step.version,
    caseId: step.caseId,
    time: startedEarlier ? dateAndTime(step.startsAt, view.zone, today) : timeOfDay(step.startsAt, view.zone),
    caseNumber: step.caseNumber,
    title: step.title,
    arches: archWords(step.arches),
    centre: step.workCentre,
    place: step.placeLabel,
    minutes: benchWords.handsOn(step.handsOnMinutes),
    due: step.dueBackAt ? benchWords.due(dateAndTime(step.dueBackAt, view.zone, today)) : null,
    slack: slackWords(step.slackMinutes),
    isLate: (step.slackMinutes ?? 0) < 0,
    state: step.state,
    mark: MARK[step.state],
    waitsFor: step.waitsFor,
    openQuestion: step.openQuestion,
    actions: ACTIONS[step.state].filter((action) => action !== 'start' || step.waitsFor === null),
  };
}

/** The work of one day in the order in which the server wants it worked. */
export const dispatchRows = (view: DispatchView, today: string): StepRow[] =>
  view.steps.map((step) => stepRow(step, view, today));

export const workTitle = (centre: string | null, on: string, today: string): string =>
  benchWords.workTitle(centre ?? benchWords.everyCentre, longDate(on, today));
