import { z } from 'zod';
import { told } from './told.js';
import { deliveredText } from './delivered.js';
import { arch, id, instant, localDate, sentence, slug, stageCode, version, zoneName } from './primitives.js';
import { appointmentState } from './appointment.js';
import { stageState } from './case.js';
import { measurementOverlay } from './measurement-range.js';

const reading = z.strictObject({
  /** A code of the measurement catalogue, or its short form such as `OVD`. */
  code: z.string().min(1).max(60),
  /** A number, a choice's code, or yes/no; three readings of one length are three entries. */
  value: z.union([z.number(), z.boolean(), z.string().min(1).max(60)]),
  unit: z.string().max(20).optional(),
  arch: arch.optional(),
  side: z.enum(['right', 'left']).optional(),
  region: slug.optional(),
  /** Answers that must be the same before two readings are compared, such as `landmarks`. */
  method: z.record(slug, z.string().min(1).max(60)).optional(),
});
export type Reading = z.output<typeof reading>;

const markedDimension = z.strictObject({ valueMm: z.number().min(38).max(98), landmarks: slug });

/** What no drawing shows of a needle-point tracing: the clinician says it. */
const tracingCircumstances = z.strictObject({
  stylusOn: z.enum(['upper', 'lower']),
  view: z.enum(['as-worn', 'mirrored']),
  posture: z.enum(['upright', 'reclined', 'supine']),
  basesMoved: z.boolean(),
  contact: z.boolean(),
  pain: z.boolean(),
  verticalDimensionChangedAfter: z.boolean().optional(),
  occlusalVerticalDimension: markedDimension.optional(),
});

/** Taps of one sitting. */
const MOST_CLOSURES = 100;
/** Named again: taken from the measures, they would bring the whole catalogue into the browser's first load. */
const TRACING_FORMS = [
  'typical',
  'flat',
  'asymmetric',
  'rounded',
  'miniature',
  'dorsally-extended',
  'interrupted',
] as const;

/** Places in which several closures ended: how many, their scatter about the mean, the widest pair. */
const closureStatistics = z.strictObject({
  count: z.int().min(1).max(MOST_CLOSURES),
  rmsMm: z.number().min(0).max(20),
  maxPairMm: z.number().min(0).max(40),
});

/** Findings that are typed where no points are given; numbers that are not known are left out. */
const typedFindings = z.strictObject({
  apex: z.enum(['single', 'none', 'double']).optional(),
  form: z.enum(TRACING_FORMS).optional(),
  roundingRadiusMm: z.number().min(0).max(20).optional(),
  armRmsMm: z.number().min(0).max(20).optional(),
  asymmetryDeg: z.number().min(0).max(180).optional(),
  dorsalExtensionMm: z.number().min(-20).max(20).optional(),
  closures: closureStatistics.optional(),
  offsetMm: z.number().min(0).max(20).optional(),
});
type FindingName = keyof z.output<typeof typedFindings>;
const FINDINGS = Object.keys(typedFindings.shape) as FindingName[];

/** A hand that draws for minutes gives some hundreds of points; nine tracings of this many still fit into one request. */
export const MOST_TRACED_POINTS = 2000;

/** A point of a tracing, mm, in the order in which it was drawn; x and y as the stated view shows them. */
export const tracedPoint = z.strictObject({
  phase: z.enum(['right', 'left', 'protrusive', 'closure']),
  x: z.number(),
  y: z.number(),
});
export type TracedPointGiven = z.output<typeof tracedPoint>;

/** One needle-point tracing: findings as entered, or points from which the service computes them. Never both. */
const tracingGiven = tracingCircumstances
  .extend({ ...typedFindings.shape, points: z.array(tracedPoint).min(1).max(MOST_TRACED_POINTS).optional() })
  .superRefine((given, context) => {
    if (given.points === undefined) {
      if (given.apex !== undefined) return;
      context.addIssue({
        code: 'custom',
        path: ['apex'],
        message: 'Say what the apex is, or give the points of the tracing.',
      });
      return;
    }
    if (given.points.filter(({ phase }) => phase === 'closure').length > MOST_CLOSURES) {
      const message = `More than ${String(MOST_CLOSURES)} closures: those of one sitting are meant.`;
      context.addIssue({ code: 'custom', path: ['points'], message });
    }
    for (const finding of FINDINGS.filter((name) => given[name] !== undefined)) {
      context.addIssue({
        code: 'custom',
        path: [finding],
        message: 'This is computed from the points: leave it out, or leave the points out.',
      });
    }
  });
export type TracingGiven = z.output<typeof tracingGiven>;

/** Place of a tracing among those of its stage, in an address. */
export const tracingNumber = z.coerce.number().int().min(1).max(10_000);

const armView = z.object({ angleDeg: z.number(), lengthMm: z.number(), rmsMm: z.number() });

/** What was computed from a tracing's points, mm and degrees, as worn: x to the patient's right, y forward. */
const tracingEvaluationView = z.object({
  apex: z.object({ xMm: z.number(), yMm: z.number(), uncertaintyMm: z.number() }),
  apexAngleDeg: z.number(),
  arms: z.object({ right: armView, left: armView }),
  /** Positive to the patient's right; null where no protrusive path was drawn. */
  protrusiveDeviationDeg: z.number().nullable(),
});

/** A tracing as it was kept. Computed findings know no bounds: a flat drawing has an apex as round as it says. */
export const tracingView = tracingCircumstances.extend({
  /** Its place among the tracings of the stage, from 1: the name of its drawing. */
  number: z.int().min(1),
  apex: z.enum(['single', 'none', 'double']),
  form: z.enum(TRACING_FORMS).optional(),
  roundingRadiusMm: z.number().optional(),
  armRmsMm: z.number().optional(),
  asymmetryDeg: z.number().optional(),
  dorsalExtensionMm: z.number().optional(),
  closures: z.object({ count: z.int(), rmsMm: z.number(), maxPairMm: z.number() }).optional(),
  offsetMm: z.number().optional(),
  /** What the drawing itself says against the stated stylus or view. */
  doubts: z.array(z.enum(['arms-swapped', 'turned'])).optional(),
  /** Whether it was drawn: then a drawing of its evaluation is kept. */
  isDrawn: z.boolean(),
  /** Null where findings were typed, or where the drawing has no apex. */
  evaluation: tracingEvaluationView.nullable(),
});
export type TracingView = z.output<typeof tracingView>;

/** A centric relation record by another method than tracing: an equal, not a failure. */
const centricRelationRecord = z.strictObject({
  method: z.enum(['bimanual-guidance', 'chin-point-guidance', 'swallowing', 'functional', 'wax-record']),
  occlusalVerticalDimension: markedDimension.optional(),
  /** Where several closures were recorded, the same statistics as beside a tracing. */
  closures: closureStatistics.optional(),
});

/** What is recorded at one stage. Saving it starts the check in the background. */
export const recordCapture = z.strictObject({
  readings: z.array(reading).max(200).default([]),
  tracings: z.array(tracingGiven).max(9).default([]),
  /** Checklist lines done, by code, with the count where one is asked for (parts in, parts out). */
  checklist: z.record(slug, z.union([z.boolean(), z.int().min(0)])).default({}),
  otherCentricRelation: z.array(centricRelationRecord).max(9).default([]),
  /** What the readings were taken with: of the clinic's devices one for each kind of reading at most. */
  deviceIds: z.array(id).max(3).optional(),
});
export type RecordCapture = z.output<typeof recordCapture>;

export const verdict = z.enum(['pass', 'caution', 'fail']);
export type Verdict = z.output<typeof verdict>;

export const verdictView = z.object({
  rule: z.string(),
  ruleVersion: z.string(),
  verdict,
  reason: z.string(),
  value: z.string().nullable(),
  limit: z.string().nullable(),
  source: z.string(),
  standing: z.string(),
  action: z.enum(['go-on', 'correct-in-chair', 'repeat', 'return-to-stage']),
  caution: deliveredText.nullable(),
  at: instant,
});
export type VerdictView = z.output<typeof verdictView>;

/** Things that are measured together, in the order of the catalogue. */
const measurementGroup = z.enum(['vertical', 'plane', 'widths', 'bases', 'grades', 'function', 'agreement', 'tracing']);
export type MeasurementGroup = z.output<typeof measurementGroup>;

const captureField = z.object({
  code: z.string(),
  name: deliveredText,
  group: measurementGroup,
  kind: z.enum(['number', 'enum', 'boolean', 'count', 'text']),
  unit: z.string().nullable(),
  plausible: z.object({ min: z.number(), max: z.number() }).nullable(),
  usual: z.object({ min: z.number(), max: z.number() }).nullable(),
  choices: z.array(z.object({ code: z.string(), label: deliveredText })),
  /** How many readings are asked for. */
  readings: z.int(),
  /** Whether a gate of this stage asks for it. */
  required: z.boolean(),
  arches: z.array(arch),
  sides: z.array(z.enum(['right', 'left'])),
  regions: z.array(z.string()),
  method: z.array(
    z.object({ key: z.string(), question: deliveredText, options: z.array(z.string()), required: z.boolean() }),
  ),
  caution: z.string().nullable(),
  source: z.string(),
});

/** What is open at a gate and exactly what is missing. */
export const gateView = z.object({
  code: slug,
  title: deliveredText,
  hard: z.boolean(),
  open: z.boolean(),
  missing: z.array(deliveredText),
  /** Whether a clinician may set it aside in writing. */
  overridable: z.boolean(),
  /** What is missing is recorded when the prescription is signed. */
  closesAtHandOver: z.boolean(),
  overriddenBy: z.string().nullable(),
});
export type GateView = z.output<typeof gateView>;

/** The central bearing screw of a tracing set, as its maker states it. */
const bearingScrew = z.strictObject({
  pitchMmPerTurn: z.number().min(0.1).max(3),
  /** Seen from the side of the screw's head. */
  raisesBy: z.enum(['clockwise', 'counter-clockwise']),
});

/** States the screw of the tracing set at hand. The set serves many visits, so that the version of one guards nothing. */
export const stateBearingScrew = bearingScrew.extend({
  /** What it takes the place of, as the person saw it; null when nobody had stated any. */
  instead: bearingScrew.nullable(),
});
export type StateBearingScrew = z.output<typeof stateBearingScrew>;

/** One visit's work at the chair: cautions, checklist, fields, verdicts and gates. */
export const stageView = z.object({
  id,
  version,
  caseId: id,
  caseNumber: z.string(),
  patientName: z.string(),
  birthOn: localDate,
  /** Null where it is not stated. */
  sex: z.enum(['female', 'male']).nullable(),
  code: stageCode,
  title: deliveredText,
  round: z.int(),
  arches: z.array(arch),
  state: stageState,
  /** IANA zone of the clinic where it takes place. */
  zone: zoneName,
  /** The visit that serves it; null while none is booked. */
  visit: z
    .object({
      id,
      version,
      state: appointmentState,
      startsAt: instant,
      endsAt: instant,
      clinicName: z.string(),
      clinicianName: z.string(),
    })
    .nullable(),
  /** The tracing set that is booked with the visit; its screw is null while nobody has stated it. */
  tracingKit: z.object({ label: z.string(), screw: bearingScrew.nullable() }).nullable(),
  /** What the clinic measures with; the last used was chosen at the chair of this visit. */
  devices: z.array(
    z.object({ id, name: z.string(), measures: z.enum(['lengths', 'angles', 'tracings']), isLastUsed: z.boolean() }),
  ),
  /** What is judged at it, as the path says: the same checks then run in the browser while values are typed. */
  milestones: z.array(slug),
  /** The practice's own ranges and limits; null while it has changed none. */
  overlay: measurementOverlay.nullable(),
  cautions: z.array(z.object({ code: z.string(), text: z.string() })),
  checklist: z.array(
    z.object({ code: slug, text: deliveredText, counted: z.boolean(), done: z.boolean(), count: z.int().nullable() }),
  ),
  fields: z.array(captureField),
  readings: z.array(reading.extend({ at: instant })),
  /** Of earlier visits: the latest of each value that this visit goes on with or is compared with. */
  earlier: z.array(reading.extend({ at: instant, stage: stageCode })),
  derived: z.array(z.object({ code: z.string(), name: deliveredText, value: z.number(), unit: z.string() })),
  tracings: z.array(tracingView),
  otherCentricRelation: z.array(centricRelationRecord),
  verdicts: z.array(verdictView),
  /** True while a saved capture has not been checked yet. */
  checking: z.boolean(),
  gates: z.array(gateView),
  /** Undecided alert of this stage: it is decided before the stage may be passed. */
  alertId: id.nullable(),
  /** The hand-over to the laboratory in force; null when no laboratory work follows. */
  prescription: z.object({ signedAt: instant.nullable(), signedBy: z.string().nullable() }).nullable(),
  mayGoOn: z.boolean(),
  sentence: z.string(),
  told,
});
export type StageView = z.output<typeof stageView>;

export const overrideGate = z.strictObject({ gate: slug, reason: z.string().trim().min(10).max(500) });
export type OverrideGate = z.output<typeof overrideGate>;

export const completeStage = z.strictObject({
  outcome: z.enum(['passed', 'repeat']),
  note: sentence.optional(),
});
export type CompleteStage = z.output<typeof completeStage>;

/** The complete hand-over to the laboratory; an open gate refuses it. */
export const signPrescription = z.strictObject({
  shade: z.string().trim().max(60).optional(),
  mould: z.string().trim().max(60).optional(),
  disinfection: z.strictObject({ agent: z.string().trim().min(1).max(80), at: instant }),
  note: z.string().trim().max(1000).optional(),
});
export type SignPrescription = z.output<typeof signPrescription>;

/** Something that a clinician has to decide, whatever day its visit is on. */
const waitingDecision = z.object({
  kind: z.enum(['alert', 'late-finding']),
  /** The alert, or the stage whose visit is over. */
  id,
  caseNumber: z.string(),
  patientName: z.string(),
  reason: z.string(),
  /** Null when nothing planned hangs on it. */
  decideBy: instant.nullable(),
  zone: zoneName,
});

/** The stage board: what waits for a decision, then the day's cases: what has arrived, is missing, may go on. */
export const stageBoard = z.object({
  on: localDate,
  clinicName: z.string(),
  sentence: z.string(),
  told,
  /** The most urgent first, at most 50. */
  waiting: z.array(waitingDecision),
  cards: z.array(
    z.object({
      appointmentId: id,
      appointmentVersion: version,
      appointmentState,
      startsAt: instant,
      zone: zoneName,
      caseId: id,
      caseNumber: z.string(),
      stageId: id,
      stageCode,
      title: deliveredText,
      patientName: z.string(),
      birthOn: localDate,
      verdict: z.enum(['may-go-on', 'check-first', 'decide', 'not-ready']),
      reason: z.string(),
      told,
      line: z.array(
        z.object({
          kind: z.enum(['visit', 'lab', 'alert']),
          label: z.string(),
          state: z.enum(['done', 'now', 'to-come', 'needs-person']),
        }),
      ),
    }),
  ),
});
export type StageBoard = z.output<typeof stageBoard>;
