import type {
  ChairMinutes,
  GateRequirement,
  LabPhase,
  PathGate,
  PathLabStep,
  PathLag,
  PathLoop,
  PathObject,
  PathVisit,
  StepPredecessor,
  StepSegment,
  TimeSpan,
} from '../path-schema.js';

/** Most times below come from practice, not from a study: they are defaults that every practice can change. */
export const COMMON = { standing: 'common-practice', source: 'common practice, no source' } as const;
const MEMORY = 'from-memory' as const;

/** Scale of chair work when one arch is treated; common practice, no source. */
export const SINGLE_ARCH_CHAIR_FACTOR = 0.7;
/** Scale of hands-on bench work when one arch is made; common practice, no source. */
export const SINGLE_ARCH_BENCH_FACTOR = 0.55;

/** Chair minutes for both arches: shortest, typical, longest. */
export function chair(min: number, typical: number, max: number): ChairMinutes {
  return { min, typical, max, singleArchFactor: SINGLE_ARCH_CHAIR_FACTOR, ...COMMON };
}

/** Chair minutes for work that concerns one arch anyway. */
export function chairOneArch(min: number, typical: number, max: number): ChairMinutes {
  return { ...chair(min, typical, max), singleArchFactor: 1 };
}

export function typical(amount: number, unit: TimeSpan['unit'], source?: string): TimeSpan {
  return {
    amount,
    unit,
    firmness: 'typical',
    ...(source === undefined ? COMMON : { standing: MEMORY, source: `${source} (from memory)` }),
  };
}

export function hard(amount: number, unit: TimeSpan['unit'], source?: string): TimeSpan {
  return { ...typical(amount, unit, source), firmness: 'hard' };
}

export const handsOn = (minutes: number): StepSegment => ({ kind: 'hands-on', minutes, holdsPlace: true });
/** Setting or cooling beside the bench: the place is free for other work. */
export const setting = (minutes: number): StepSegment => ({ kind: 'set', minutes, holdsPlace: false });
/** A machine runs by itself and keeps its place. */
export const machine = (minutes: number): StepSegment => ({ kind: 'unattended', minutes, holdsPlace: true });

/** Follows a visit or step at any time from its end on. */
export const after = (code: string): StepPredecessor => ({ code, lag: null, min: null, max: null });

export function step(
  code: string,
  title: string,
  workCentre: string,
  segments: StepSegment[],
  predecessors: StepPredecessor[],
  extra: Partial<Pick<PathLabStep, 'batch' | 'pointOfNoReturn' | 'singleArchFactor'>> = {},
): PathLabStep {
  return {
    code,
    title,
    workCentre,
    segments,
    singleArchFactor: SINGLE_ARCH_BENCH_FACTOR,
    batch: null,
    after: predecessors,
    pointOfNoReturn: null,
    ...COMMON,
    ...extra,
  };
}

/** Lab working days from acceptance to ready: usual from, usual to, in a rush. */
export function turnaround(usualMinDays: number, usualMaxDays: number, rushDays: number): LabPhase['turnaround'] {
  return { usualMinDays, usualMaxDays, rushDays, ...COMMON };
}

export function phase(
  code: string,
  [from, to]: [string, string],
  days: LabPhase['turnaround'],
  steps: PathLabStep[],
  outward: LabPhase['outward'] = 'courier',
): LabPhase {
  return { code, after: from, before: to, outward, turnaround: days, steps };
}

export function lag(
  code: string,
  title: string,
  [from, to]: [string, string],
  limits: { min?: TimeSpan; max?: TimeSpan },
): PathLag {
  return { code, title, from, to, min: limits.min ?? null, max: limits.max ?? null };
}

/** A visit with the usual settings: clinician and assistant, chained, no kit. */
export function visit(
  given: Pick<PathVisit, 'code' | 'title' | 'milestone' | 'joins' | 'chairMinutes'> & Partial<PathVisit>,
): PathVisit {
  return {
    skills: ['complete-dentures'],
    kits: [],
    assistant: true,
    mayTravel: true,
    captures: [],
    checklist: [],
    cautions: ['two-identifiers'],
    isDelivery: false,
    isReview: false,
    chained: true,
    pointOfNoReturn: null,
    ...given,
  };
}

/** A required measurement or finding of the whole mouth. */
export const need = (code: string): PathVisit['captures'][number] => ({ code, perArch: false, required: true });
/** A required measurement or finding of each arch. */
export const needEach = (code: string): PathVisit['captures'][number] => ({ code, perArch: true, required: true });
/** Recorded when it helps; opens no gate. */
export const may = (code: string): PathVisit['captures'][number] => ({ code, perArch: false, required: false });

export const tick = (code: string, text: string): PathVisit['checklist'][number] => ({ code, text, counted: false });
export const count = (code: string, text: string): PathVisit['checklist'][number] => ({ code, text, counted: true });

export const captured = (at: string, ...codes: string[]): GateRequirement[] =>
  codes.map((code) => ({ kind: 'capture', code, at }));
export const ticked = (at: string, ...codes: string[]): GateRequirement[] =>
  codes.map((code) => ({ kind: 'checklist', code, at }));

/** Line on which the parts of a tracing set are counted before it is mounted. */
export const PARTS_IN = 'parts-in';

/** As many parts of the tracing set out of the mouth as went in; 0 and 0 when no tracing was made. */
export const partsOut = (at: string): GateRequirement => ({
  kind: 'equal-counts',
  codes: [PARTS_IN, 'parts-out'],
  at,
});

/** A gate that blocks until a clinician overrides it in writing. */
export function hardGate(
  code: string,
  title: string,
  before: PathGate['before'],
  requires: GateRequirement[],
  source: PathGate['source'] = COMMON.source,
): PathGate {
  return { code, title, before, requires, firmness: 'hard', overridable: true, ...COMMON, source };
}

/** No dispatch without a disinfection record; published guidance puts the duty on the dentist, and no override exists. */
export function disinfectionGate(afterVisit: string): PathGate {
  return {
    code: `disinfected-${afterVisit.toLowerCase()}`,
    title: 'Disinfection recorded before dispatch: agent and time',
    before: { kind: 'prescription', code: afterVisit },
    requires: [{ kind: 'disinfection', at: afterVisit }],
    firmness: 'hard',
    overridable: false,
    standing: 'published',
    source: 'Scottish dental guidance, disinfection before dispatch',
  };
}

export function extra(
  [visitsMin, visitsMax]: [number, number],
  [labWorkingDaysMin, labWorkingDaysMax]: [number, number],
): PathLoop['extra'] {
  return { visitsMin, visitsMax, labWorkingDaysMin, labWorkingDaysMax, ...COMMON };
}

export const made = (code: string, title: string, madeAt: string): PathObject => ({
  code,
  title,
  madeAt,
  shared: false,
});
/** A record that serves both arches: voiding it voids both. */
export const madeForBoth = (code: string, title: string, madeAt: string): PathObject => ({
  ...made(code, title, madeAt),
  shared: true,
});
