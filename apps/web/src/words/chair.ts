import type { MeasurementGroup } from '@archwright/contracts';
import { messages as english } from './en/chair.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/chair.js'), ar: () => import('./ar/chair.js') });
const { board, stage, alert } = said;

const counted = (n: number) => ({ n });
const at = (when: string) => ({ when });
const titled = (title: string) => ({ title });
const named = (number: string, name: string) => ({ number, name });
const between = (min: number, max: number) => ({ min, max });
const measuredBetween = (min: number, max: number, unit: string) => ({ min, max, unit });

const dayAtClinic = filled(board.title, (day: string, clinic: string) => ({ day, clinic }));

/** Words of the stage board. */
export const boardWords = {
  ...board,
  title: (day: string, clinic: string) => (clinic ? dayAtClinic(day, clinic) : day),
  decideBy: filled(board.decideBy, at),
  open: filled(board.open, (title: string, name: string) => ({ title, name })),
  lineOf: filled(board.lineOf, (parts: string) => ({ parts })),
};

const reading = filled(stage.reading, counted);
const since = filled(stage.since, (from: string) => ({ from }));
const fromUntil = filled(stage.fromUntil, (from: string, until: string) => ({ from, until }));
const signed = filled(stage.signed, at);
const signedBy = filled(stage.signedBy, (when: string, by: string) => ({ when, by }));

/** Words of one stage at the chair. */
export const stageWords = {
  ...stage,
  title: filled(stage.title, (number: string, title: string) => ({ number, title })),
  patient: filled(stage.patient, (name: string, birth: string) => ({ name, birth })),
  round: filled(stage.round, counted),
  unit: filled(stage.unit, (unit: string) => ({ unit })),
  usual: filled(stage.usual, measuredBetween),
  plausible: filled(stage.plausible, measuredBetween),
  centimetres: filled(stage.centimetres, (mm: number) => ({ mm })),
  reading: (n: number, of: number) => (of > 1 ? reading(n) : ''),
  attempt: filled(stage.attempt, counted),
  removeTracing: filled(stage.removeTracing, counted),
  record: filled(stage.record, counted),
  removeRecord: filled(stage.removeRecord, counted),
  tracingChoices: stage.tracingChoices as Readonly<Record<string, string>>,
  mm: filled(stage.mm, (value: number) => ({ value })),
  tracedAt: filled(stage.tracedAt, (value: number) => ({ value })),
  closed: filled(stage.closed, (n: number, rmsMm: number) => ({ n, rmsMm })),
  tracingRange: filled(stage.tracingRange, between),
  others: filled(stage.others, (group: MeasurementGroup, n: number) => ({ group: said.groups[group], n })),
  earlier: filled(stage.earlier, (value: string, unit: string, of: string) => ({
    value: unit ? `${value} ${unit}` : value,
    stage: of,
  })),
  problems: filled(stage.problems, counted),
  passedChecks: filled(stage.passedChecks, counted),
  said: (from: string, until: string | null) => (until === null ? since(from) : fromUntil(from, until)),
  rule: filled(stage.rule, (code: string, version: string) => ({ code, version })),
  overriddenBy: filled(stage.overriddenBy, (name: string) => ({ name })),
  visit: {
    ...stage.visit,
    when: filled(stage.visit.when, (when: string, clinic: string, clinician: string) => ({ when, clinic, clinician })),
  },
  signed: (when: string, by: string) => (by ? signedBy(when, by) : signed(when)),
};

/** Words of a remake alert. */
export const alertWords = {
  ...alert,
  title: filled(alert.title, named),
  decidedTitle: filled(alert.decidedTitle, named),
  by: filled(alert.by, at),
  raised: filled(alert.raised, at),
  returnTo: filled(alert.returnTo, titled),
  foundAt: filled(alert.foundAt, titled),
  least: filled(alert.least, counted),
  cost: filled(alert.cost, (moved: number, least: number, others: number) => ({ moved, least, others })),
  acceptOf: filled(alert.acceptOf, (label: string) => ({ label })),
};
