import { z } from 'zod';

/** An upper or a lower jaw's denture. */
const arch = z.enum(['upper', 'lower']);
export type Arch = z.output<typeof arch>;

/** Code of a visit, unique within a path version, such as `V3` or `D2`. */
const visitCode = z.string().regex(/^[A-Z][A-Za-z0-9]{0,19}$/, 'a visit code such as V3');
/** Code of a lab step, gate, loop, lag, object or checklist line. */
const slug = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'lower-case words joined by hyphens');
/** Code of a visit or of a lab step. */
const partCode = z.string().min(1).max(60);
/** Code of a measurement such as `OVD`, or of a finding such as `tissue-state`. */
const captureCode = z.string().regex(/^[A-Za-z][A-Za-z0-9-]{0,39}$/, 'a measurement code such as OVD');
const text = z.string().trim().min(1).max(500);

/** Where a number or rule comes from; shown beside it wherever it is shown. */
const provenance = {
  standing: z.enum(['published', 'from-memory', 'common-practice', 'project-default', 'derived', 'practice']),
  source: text,
};

/**
 * A length of time with its unit. Minutes are elapsed; calendar days count dates in the clinic's zone; lab working days count
 * the laboratory's open days after acceptance (cut-off, then the next open day).
 */
const timeSpan = z.strictObject({
  amount: z.number().min(0),
  unit: z.enum(['minutes', 'calendar-days', 'lab-working-days']),
  /** `hard` blocks unless a clinician overrides in writing; `typical` is a default a practice may change. */
  firmness: z.enum(['hard', 'typical']),
  ...provenance,
});
export type TimeSpan = z.output<typeof timeSpan>;

const chairMinutes = z.strictObject({
  /** Minutes for both arches, one operator. */
  min: z.int().min(5),
  typical: z.int().min(5),
  max: z.int().min(5),
  /** Multiplier when one arch only is treated; 1 for work that concerns one arch anyway. */
  singleArchFactor: z.number().min(0.1).max(1),
  ...provenance,
});
export type ChairMinutes = z.output<typeof chairMinutes>;

const milestone = z.enum([
  'examination',
  'preliminary-impression',
  'healing',
  'extraction',
  'surgery',
  'final-impression',
  'jaw-relation',
  'impression-and-jaw-relation',
  'trial',
  'placement',
  'attachment-pick-up',
  'review',
  'recall',
]);
export type Milestone = z.output<typeof milestone>;

const pointOfNoReturn = z.enum(['extraction', 'surgery', 'flasking', 'final-print', 'final-mill']);
export type PointOfNoReturnKind = z.output<typeof pointOfNoReturn>;

const visit = z.strictObject({
  code: visitCode,
  title: text,
  milestone,
  /** Name under which this visit is one with the opposing arch's visit of the same name; null when it concerns this arch alone. */
  joins: slug.nullable(),
  chairMinutes,
  skills: z.array(slug),
  kits: z.array(slug),
  assistant: z.boolean(),
  /** May be made at the patient's home, with a travel block. */
  mayTravel: z.boolean(),
  captures: z.array(z.strictObject({ code: captureCode, perArch: z.boolean(), required: z.boolean() })),
  checklist: z.array(z.strictObject({ code: slug, text, counted: z.boolean() })),
  /** Codes of the caution texts shown before work starts. */
  cautions: z.array(slug),
  isDelivery: z.boolean(),
  isReview: z.boolean(),
  /** False for later reviews and recalls: they get a due date, no booking, when the case is planned. */
  chained: z.boolean(),
  pointOfNoReturn: pointOfNoReturn.nullable(),
});
export type PathVisit = z.output<typeof visit>;

const segment = z.strictObject({
  /** `hands-on` pauses over closed hours; `set` and `unattended` run on. */
  kind: z.enum(['hands-on', 'set', 'unattended']),
  /** Minutes for both arches. */
  minutes: z.int().min(5),
  /** Whether the work centre's place stays taken during this segment. */
  holdsPlace: z.boolean(),
});
export type StepSegment = z.output<typeof segment>;

const predecessor = z.strictObject({
  /** The phase's first visit, or another step of the phase. */
  code: partCode,
  /** Code under which a material record or an agreed relaxation replaces these limits; null when there are none. */
  lag: slug.nullable(),
  min: timeSpan.nullable(),
  max: timeSpan.nullable(),
});
export type StepPredecessor = z.output<typeof predecessor>;

const labStep = z.strictObject({
  code: slug,
  title: text,
  workCentre: slug,
  segments: z.array(segment).min(1),
  singleArchFactor: z.number().min(0.1).max(1),
  /** Work of several cases that shares one run of the machine. */
  batch: z.enum(['curing-cycle', 'print-plate']).nullable(),
  after: z.array(predecessor).min(1),
  pointOfNoReturn: pointOfNoReturn.nullable(),
  ...provenance,
});
export type PathLabStep = z.output<typeof labStep>;

const labPhase = z.strictObject({
  code: slug,
  after: visitCode,
  before: visitCode,
  /** How the work reaches the laboratory: carried, or sent as files. */
  outward: z.enum(['courier', 'file']),
  /** Lab working days from acceptance until the work is ready: as usually agreed, and in a rush. */
  turnaround: z.strictObject({
    usualMinDays: z.int().min(0),
    usualMaxDays: z.int().min(0),
    rushDays: z.int().min(0),
    ...provenance,
  }),
  steps: z.array(labStep).min(1),
});
export type LabPhase = z.output<typeof labPhase>;

const lag = z.strictObject({
  code: slug,
  title: text,
  /** A visit, or a lab step (then measured from its end). */
  from: partCode,
  to: visitCode,
  min: timeSpan.nullable(),
  max: timeSpan.nullable(),
});
export type PathLag = z.output<typeof lag>;

const caseRecord = z.enum(['consent', 'treatment-approval', 'medicines-asked', 'allergies-asked']);
export type CaseRecord = z.output<typeof caseRecord>;

const requirement = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('capture'), code: captureCode, at: visitCode }),
  z.strictObject({ kind: z.literal('checklist'), code: slug, at: visitCode }),
  /** Two counts of a checklist are both there and equal: parts in, parts out. */
  z.strictObject({ kind: z.literal('equal-counts'), codes: z.tuple([slug, slug]), at: visitCode }),
  z.strictObject({ kind: z.literal('no-failed-check'), at: visitCode }),
  z.strictObject({ kind: z.literal('stage-passed'), at: visitCode }),
  z.strictObject({ kind: z.literal('case-record'), record: caseRecord }),
  z.strictObject({ kind: z.literal('disinfection'), at: visitCode }),
  z.strictObject({ kind: z.literal('in-the-clinic'), object: slug }),
]);
export type GateRequirement = z.output<typeof requirement>;

const gate = z.strictObject({
  code: slug,
  title: text,
  /** What may not happen while the gate is open: a visit, a lab step, or signing the prescription made after a visit. */
  before: z.strictObject({ kind: z.enum(['visit', 'lab-step', 'prescription']), code: partCode }),
  requires: z.array(requirement).min(1),
  firmness: z.enum(['hard', 'soft']),
  /** Whether a clinician may close it with a logged reason. */
  overridable: z.boolean(),
  ...provenance,
});
export type PathGate = z.output<typeof gate>;

const remedy = z.discriminatedUnion('kind', [
  /** Done again in the same visit, at most `tries` times; then loop `otherwise`. */
  z.strictObject({ kind: z.literal('repeat-in-visit'), tries: z.int().min(1), minutesEach: z.int().min(5) }),
  /** Go back to a visit or a lab step; everything made from there on is made again. */
  z.strictObject({ kind: z.literal('return'), to: partCode }),
  /** Rounds of mucosa healing stand before the final impression. */
  z.strictObject({ kind: z.literal('healing') }),
  /** Nothing goes on until identity is settled by a person. */
  z.strictObject({ kind: z.literal('quarantine') }),
]);

const loop = z.strictObject({
  code: slug,
  trigger: text,
  /** Visits or lab steps where it is found. */
  foundAt: z.array(partCode).min(1),
  remedy,
  /** The loop to follow when repeating in the visit did not help; null when there is none. */
  otherwise: slug.nullable(),
  discards: z.array(slug),
  extra: z.strictObject({
    visitsMin: z.int().min(0),
    visitsMax: z.int().min(0),
    labWorkingDaysMin: z.int().min(0),
    labWorkingDaysMax: z.int().min(0),
    ...provenance,
  }),
});
export type PathLoop = z.output<typeof loop>;

const pathObject = z.strictObject({
  code: slug,
  title: text,
  /** The visit or lab step that makes it; `before-case` for what the patient brings. */
  madeAt: partCode,
  /** True for a record that serves both arches, such as the jaw relation: voiding it voids both. */
  shared: z.boolean(),
});
export type PathObject = z.output<typeof pathObject>;

/**
 * A treatment path: one immutable published version. Visits are totally ordered as listed; between two of them stands at most
 * one lab phase. Plain data, so that a practice can copy, change and store it.
 */
export const treatmentPath = z.strictObject({
  code: slug,
  version: z.int().min(1),
  title: text,
  summary: text,
  arches: z.array(arch).min(1),
  visits: z.array(visit).min(1),
  labPhases: z.array(labPhase),
  lags: z.array(lag),
  gates: z.array(gate),
  loops: z.array(loop),
  objects: z.array(pathObject),
  /** Beside an opposing arch on another path: which of its shared stages this path follows and must be finished before. */
  opposing: z.strictObject({ startsAfter: slug.nullable(), finishedBefore: slug.nullable() }),
});
export type TreatmentPath = z.output<typeof treatmentPath>;
