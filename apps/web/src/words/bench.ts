import type { LabMaterial, LabStepAction } from '@archwright/contracts';
import { messages as english } from './en/bench.js';
import { filled, inLanguage } from './messages.js';
import { enumerated } from './plural.js';

const said = await inLanguage(english, { de: () => import('./de/bench.js'), ar: () => import('./ar/bench.js') });

const ofStep = (step: string) => ({ step });
const avoid = filled(said.bench.avoid, (materials: string) => ({ materials }));

/** Words of the laboratory. */
export const benchWords = {
  ...said.bench,
  title: filled(said.bench.title, (lab: string) => ({ lab })),
  cell: filled(said.bench.cell, (centre: string, day: string, booked: number, open: number) => ({
    centre,
    day,
    booked,
    open,
  })),
  cellOver: filled(said.bench.cellOver, (centre: string, day: string, booked: number, open: number) => ({
    centre,
    day,
    booked,
    open,
    over: booked - open,
  })),
  pauseUntil: filled(said.bench.pauseUntil, (deadline: string) => ({ deadline })),
  seeWorkOf: filled(said.bench.seeWorkOf, (number: string) => ({ number })),
  workTitle: filled(said.bench.workTitle, (centre: string, day: string) => ({ centre, day })),
  step: filled(said.bench.step, (title: string, arches: string) => ({ title, arches })),
  stepOf: filled(said.bench.stepOf, (number: string, title: string) => ({ number, title })),
  place: filled(said.bench.place, (centre: string, place: string) => ({ centre, place })),
  planned: filled(said.bench.planned, (when: string) => ({ when })),
  due: filled(said.bench.due, (when: string) => ({ when })),
  lateBy: filled(said.bench.lateBy, (length: string) => ({ length })),
  handsOn: filled(said.bench.handsOn, (minutes: number) => ({ minutes })),
  avoid: (materials: readonly LabMaterial[]) => avoid(enumerated(materials.map((each) => said.bench.material[each]))),
  actionOn: filled(said.bench.actionOn, (action: string, number: string, title: string) => ({ action, number, title })),
  done: {
    start: filled(said.bench.done.start, ofStep),
    pause: filled(said.bench.done.pause, ofStep),
    finish: filled(said.bench.done.finish, ofStep),
    ask: filled(said.bench.done.ask, ofStep),
    reject: filled(said.bench.done.reject, ofStep),
  } satisfies Record<LabStepAction['action'], (step: string) => string>,
};

/** Words of a laboratory's question and the clinic's answer. */
export const questionWords = {
  ...said.question,
  asked: filled(said.question.asked, (who: string, when: string) => ({ who, when })),
  stopped: filled(said.question.stopped, (when: string) => ({ when })),
  answered: filled(said.question.answered, (who: string, when: string) => ({ who, when })),
  about: filled(said.question.about, (laboratory: string, step: string, arches: string) => ({
    laboratory,
    step,
    arches,
  })),
  patient: filled(said.question.patient, (name: string, born: string) => ({ name, born })),
  answerTo: filled(said.question.answerTo, (about: string) => ({ about })),
};

/** Words of finding a case by its number. */
export const labFindWords = {
  ...said.labFind,
  results: filled(said.labFind.results, (q: string) => ({ q })),
  nothing: filled(said.labFind.nothing, (q: string) => ({ q })),
  placement: filled(said.labFind.placement, (day: string) => ({ day })),
};

/** Words of a case as its laboratory sees it. */
export const labCaseWords = {
  ...said.labCase,
  title: filled(said.labCase.title, (number: string, title: string) => ({ number, title })),
  path: filled(said.labCase.path, (arch: string, title: string) => ({ arch, title })),
  paths: filled(said.labCase.paths, (one: string, other: string) => ({ one, other })),
  delivery: filled(said.labCase.delivery, (day: string) => ({ day })),
  progress: filled(said.labCase.progress, (steps: number, finished: number) => ({ steps, finished })),
  visit: filled(said.labCase.visit, (round: number) => ({ round })),
  visitAt: filled(said.labCase.visitAt, (clinic: string, clinician: string) => ({ clinic, clinician })),
  /** `minutes` is null where they are not known. */
  step: filled(said.labCase.step, (arches: string, minutes: number | null, round: number) => ({
    arches,
    isTimed: minutes === null ? 'no' : 'yes',
    minutes: minutes ?? 0,
    round,
  })),
  showInListOf: filled(said.labCase.showInListOf, (title: string) => ({ title })),
  waitsFor: filled(said.labCase.waitsFor, (what: string) => ({ what })),
  rejectedFor: filled(said.labCase.rejectedFor, (reason: string) => ({ reason })),
  order: filled(said.labCase.order, (title: string, round: number, arches: string) => ({ title, round, arches })),
  signed: filled(said.labCase.signed, (who: string, when: string) => ({ who, when })),
};
