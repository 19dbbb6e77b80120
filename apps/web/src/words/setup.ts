import type { SetupKind } from '@archwright/contracts';
import { messages as english } from './en/setup.js';
import { filled, inLanguage } from './messages.js';
import { enumerated, listed, spelled } from './plural.js';

const said = await inLanguage(english, { de: () => import('./de/setup.js'), ar: () => import('./ar/setup.js') });
const { setup, recurrence } = said;
const counted = (n: number) => ({ n });
const numbered = (n: number, label: string) => ({ n, label });
const ofLabel = (label: string) => ({ label });
const ofStretch = (stretch: string) => ({ stretch });
const atTime = (time: string) => ({ time });

const next = filled(setup.next, (time: string, dates: string) => ({ time, dates }));
const noNext = filled(setup.noNext, atTime);

/** Words of the screens on which a practice says what it consists of. */
export const setupWords = {
  ...setup,
  sentence: filled(setup.sentence, (clinics: number, people: number, retired: number) => ({
    clinics,
    people,
    retired,
  })),
  add: (kind: SetupKind) => setup.add[kind],
  toLab: filled(setup.toLab, atTime),
  toClinic: filled(setup.toClinic, atTime),
  placed: filled(setup.placed, (name: string, at: string) => ({ name, at })),
  laboratoryAbout: filled(setup.laboratoryAbout, (zone: string, time: string) => ({ zone, time })),
  personAbout: filled(setup.personAbout, (role: string, skills: string) => ({ role, skills })),
  placesOf: filled(setup.placesOf, counted),
  closed: filled(setup.closed, (from: string, until: string) => ({ from, until })),
  stretchOf: filled(setup.stretchOf, numbered),
  asRuleOf: filled(setup.asRuleOf, ofStretch),
  asDaysOf: filled(setup.asDaysOf, ofStretch),
  addStretchTo: filled(setup.addStretchTo, ofLabel),
  removeStretch: filled(setup.removeStretch, counted),
  removeStretchOf: filled(setup.removeStretchOf, numbered),
  next: (time: string, dates: readonly string[]) => (dates.length === 0 ? noNext(time) : next(time, enumerated(dates))),
  problems: filled(setup.problems, counted),
  accepted: filled(setup.accepted, (what: string) => ({ what })),
  nothing: filled(setup.nothing, (looked: number) => ({ looked })),
  touched: filled(setup.touched, (n: number, looked: number) => ({ n, looked })),
  settled: filled(setup.settled, counted),
  caseOf: filled(setup.caseOf, (number: string, name: string) => ({ number, name })),
};

/** Where a rule stands: alone in its line, or within a sentence. */
export type RulePlace = 'alone' | 'within';

interface RuleParts {
  every: string;
  /** Empty where the rule has none. */
  days: string;
  months: string;
  times: number | null;
  until: string | null;
}

const nth = filled(recurrence.nth, counted);
const fromEnd = filled(recurrence.fromEnd, counted);

/** Words of recurring times. */
export const recurrenceWords = {
  every: filled(recurrence.every, (unit: string, interval: number, place: RulePlace) => ({ unit, interval, place })),
  rule: filled(recurrence.rule, ({ every, days, months, times, until }: RuleParts) => ({
    every,
    days,
    hasDays: days === '' ? 'no' : 'yes',
    months,
    hasMonths: months === '' ? 'no' : 'yes',
    ends: times !== null ? 'count' : until !== null ? 'date' : 'never',
    times: times ?? 0,
    until: until ?? '',
  })),
  /** Negative numbers count from the end. */
  nth: (n: number) => (n < 0 ? fromEnd(-n) : nth(n)),
  run: filled(recurrence.run, (first: string, last: string) => ({ first, last })),
  numberedDay: filled(recurrence.numberedDay, (nth: string, day: string) => ({ nth, day })),
  date: filled(recurrence.date, (nth: string) => ({ nth })),
  dateFromEnd: filled(recurrence.dateFromEnd, (nth: string) => ({ nth })),
  week: filled(recurrence.week, counted),
  dayOfYear: filled(recurrence.dayOfYear, counted),
  chosen: filled(recurrence.chosen, (nth: string, days: string) => ({ nth, days })),
  departure: filled(recurrence.departure, (rule: string, at: string) => ({ rule, at })),
  hours: filled(recurrence.hours, (rule: string, from: string, until: string) => ({ rule, from, until })),
};

/** Codes in the words of the person who reads them. */
export const codesInWords = (codes: readonly string[]): string => listed(codes.map(spelled));
