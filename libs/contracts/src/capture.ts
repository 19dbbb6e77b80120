import { z } from 'zod';
import { arch, id, instant, localDate, sentence, slug, stageCode, version, zoneName } from './primitives.js';
import { appointmentState } from './appointment.js';
import { stageState } from './case.js';

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

/** Findings of one needle-point tracing as entered by the clinician; numbers that are not known are left out. */
const tracingEntry = z.strictObject({
  stylusOn: z.enum(['upper', 'lower']),
  view: z.enum(['as-worn', 'mirrored']),
  posture: z.enum(['upright', 'reclined', 'supine']),
  apex: z.enum(['single', 'none', 'double']),
  form: z
    .enum(['typical', 'flat', 'asymmetric', 'rounded', 'miniature', 'dorsally-extended', 'interrupted'])
    .optional(),
  basesMoved: z.boolean(),
  contact: z.boolean(),
  pain: z.boolean(),
  verticalDimensionChangedAfter: z.boolean().optional(),
  occlusalVerticalDimension: markedDimension.optional(),
  roundingRadiusMm: z.number().min(0).max(20).optional(),
  armRmsMm: z.number().min(0).max(20).optional(),
  asymmetryDeg: z.number().min(0).max(180).optional(),
  dorsalExtensionMm: z.number().min(-20).max(20).optional(),
  closures: z
    .strictObject({
      count: z.int().min(1).max(100),
      rmsMm: z.number().min(0).max(20),
      maxPairMm: z.number().min(0).max(40),
    })
    .optional(),
  offsetMm: z.number().min(0).max(20).optional(),
});

/** A centric relation record by another method than tracing: an equal, not a failure. */
const centricRelationRecord = z.strictObject({
  method: z.enum(['bimanual-guidance', 'chin-point-guidance', 'swallowing', 'functional', 'wax-record']),
  occlusalVerticalDimension: markedDimension.optional(),
});

/** What is recorded at one stage. Saving it starts the check in the background. */
export const recordCapture = z.strictObject({
  readings: z.array(reading).max(200).default([]),
  tracings: z.array(tracingEntry).max(9).default([]),
  /** Checklist lines done, by code, with the count where one is asked for (parts in, parts out). */
  checklist: z.record(slug, z.union([z.boolean(), z.int().min(0)])).default({}),
  otherCentricRelation: z.array(centricRelationRecord).max(9).default([]),
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
  caution: z.string().nullable(),
  at: instant,
});
export type VerdictView = z.output<typeof verdictView>;

const captureField = z.object({
  code: z.string(),
  name: z.string(),
  kind: z.enum(['number', 'enum', 'boolean', 'count', 'text']),
  unit: z.string().nullable(),
  plausible: z.object({ min: z.number(), max: z.number() }).nullable(),
  usual: z.object({ min: z.number(), max: z.number() }).nullable(),
  choices: z.array(z.object({ code: z.string(), label: z.string() })),
  /** How many readings are asked for. */
  readings: z.int(),
  /** Whether a gate of this stage asks for it. */
  required: z.boolean(),
  arches: z.array(arch),
  sides: z.array(z.enum(['right', 'left'])),
  regions: z.array(z.string()),
  method: z.array(
    z.object({ key: z.string(), question: z.string(), options: z.array(z.string()), required: z.boolean() }),
  ),
  caution: z.string().nullable(),
  source: z.string(),
});

/** What is open at a gate and exactly what is missing. */
export const gateView = z.object({
  code: slug,
  title: z.string(),
  hard: z.boolean(),
  open: z.boolean(),
  missing: z.array(z.string()),
  /** Whether a clinician may set it aside in writing. */
  overridable: z.boolean(),
  /** What is missing is recorded when the prescription is signed. */
  closesAtHandOver: z.boolean(),
  overriddenBy: z.string().nullable(),
});
export type GateView = z.output<typeof gateView>;

/** One visit's work at the chair: cautions, checklist, fields, verdicts and gates. */
export const stageView = z.object({
  id,
  version,
  caseId: id,
  caseNumber: z.string(),
  patientName: z.string(),
  birthOn: localDate,
  code: stageCode,
  title: z.string(),
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
  /** What is judged at it, as the path says: the same checks then run in the browser while values are typed. */
  milestones: z.array(slug),
  cautions: z.array(z.object({ code: z.string(), text: z.string() })),
  checklist: z.array(
    z.object({ code: slug, text: z.string(), counted: z.boolean(), done: z.boolean(), count: z.int().nullable() }),
  ),
  fields: z.array(captureField),
  readings: z.array(reading.extend({ at: instant })),
  derived: z.array(z.object({ code: z.string(), name: z.string(), value: z.number(), unit: z.string() })),
  tracings: z.array(tracingEntry),
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
      title: z.string(),
      patientName: z.string(),
      birthOn: localDate,
      verdict: z.enum(['may-go-on', 'check-first', 'decide', 'not-ready']),
      reason: z.string(),
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
