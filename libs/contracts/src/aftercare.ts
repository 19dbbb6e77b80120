import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { arch, id, instant, localDate, page, sentence, slug, stageCode, version } from './primitives.js';

/** What may hurt at a place. Common practice, no source. */
export const soreSpotCause = z.enum([
  'long-border',
  'pressure-of-fitting-surface',
  'uneven-occlusion',
  'raised-vertical-dimension',
  'rough-surface',
  'undercut',
  'moving-base',
  'not-known',
]);

export const denturePart = z.enum(['border', 'fitting-surface', 'polished-surface', 'occlusal-surface']);

const recallState = z.enum(['due', 'booked', 'done', 'declined', 'withdrawn']);

const pain = z.int().min(0).max(10);

export const recordSoreSpot = z.strictObject({
  arch,
  /** A region of the sore-spot map; the service checks that the arch has it. */
  region: slug,
  foundOn: localDate,
  /** As the patient says: 0 none, 10 the worst. */
  pain,
  suspectedCause: soreSpotCause,
  note: sentence.nullable().default(null),
});
export type RecordSoreSpot = z.output<typeof recordSoreSpot>;

export const recordHealing = z.strictObject({ healedOn: localDate });
export type RecordHealing = z.output<typeof recordHealing>;

export const recordAdjustment = z.strictObject({
  arch,
  /** The spot that it is to relieve; null for an adjustment of another reason, such as of the occlusion. */
  soreSpotId: id.nullable().default(null),
  surface: denturePart,
  /** What was relieved or changed. */
  what: sentence,
  /** How much, in words, such as "a light stroke" or "the border by its width". */
  amount: sentence,
});
export type RecordAdjustment = z.output<typeof recordAdjustment>;

export const adjustmentView = z.object({
  id,
  caseId: id,
  soreSpotId: id.nullable(),
  arch,
  surface: denturePart,
  what: z.string(),
  amount: z.string(),
  doneAt: instant,
  doneBy: z.string(),
});
export type AdjustmentView = z.output<typeof adjustmentView>;

/** A sore spot that outlasted two weeks: refer, or say why not. */
export const referralTaskView = z.object({
  id,
  version,
  reason: z.string(),
  dueOn: localDate,
  state: z.enum(['open', 'referred', 'declined', 'resolved']),
  decidedAt: instant.nullable(),
  decidedBy: z.string().nullable(),
  decisionNote: z.string().nullable(),
});
export type ReferralTaskView = z.output<typeof referralTaskView>;

/** A clinician's decision; declining says why. */
export const decideReferral = z.discriminatedUnion('decision', [
  z.strictObject({ decision: z.literal('referred'), note: sentence.nullable().default(null) }),
  z.strictObject({ decision: z.literal('declined'), note: sentence }),
]);
export type DecideReferral = z.output<typeof decideReferral>;

export const soreSpotView = z.object({
  id,
  version,
  caseId: id,
  arch,
  region: slug,
  /** The patient's side. */
  side: z.enum(['left', 'right', 'midline']),
  foundOn: localDate,
  foundBy: z.string(),
  pain,
  suspectedCause: soreSpotCause,
  note: z.string().nullable(),
  /** Null while it is open. */
  healedOn: localDate.nullable(),
  /** The two-week counter as it stands today. */
  watch: z.object({
    state: z.enum(['healed', 'watched', 'refer']),
    referOn: localDate.nullable(),
    reason: z.string(),
  }),
  adjustments: z.array(adjustmentView),
  referral: referralTaskView.nullable(),
});
export type SoreSpotView = z.output<typeof soreSpotView>;

/** A later check with its due date: reviews once, recalls again and again. */
export const recallView = z.object({
  id,
  version,
  caseId: id,
  caseNumber: z.string(),
  patientId: id,
  patientName: z.string(),
  phone: z.string().nullable(),
  /** Name it as `review` when asking for offers. */
  stage: stageCode,
  title: deliveredText,
  dueOn: localDate,
  state: recallState,
  reason: z.string().nullable(),
  appointmentId: id.nullable(),
  startsAt: instant.nullable(),
});
export type RecallView = z.output<typeof recallView>;

export const recallQuery = z.strictObject({
  state: recallState.default('due'),
  /** Due on this date or before; left out: any date. */
  until: localDate.optional(),
  clinicId: id.optional(),
  cursor: z.string().max(500).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(20),
});
export type RecallQuery = z.output<typeof recallQuery>;

export const recallPage = page(recallView);
export type RecallPage = z.output<typeof recallPage>;

/** What becomes of a check that is due and not booked. */
export const decideRecall = z.discriminatedUnion('decision', [
  z.strictObject({ decision: z.literal('declined'), reason: sentence }),
  /** Made without a visit, such as on the telephone. */
  z.strictObject({ decision: z.literal('done'), reason: sentence }),
  z.strictObject({ decision: z.literal('put-off'), dueOn: localDate, reason: sentence }),
]);
export type DecideRecall = z.output<typeof decideRecall>;

/** Everything after placement, in one view. */
export const aftercareView = z.object({
  caseId: id,
  caseNumber: z.string(),
  /** The day on which the counters stand, by the clinic's calendar. */
  on: localDate,
  sentence: z.string(),
  /** Why a sore that does not heal is referred, and who stands behind the rule. */
  caution: z.object({ hazard: z.string(), text: z.string(), source: z.string() }),
  /** Open ones first, then the latest. */
  soreSpots: z.array(soreSpotView),
  /** How recalls get their dates, and who stands behind it. */
  recallRule: z.string(),
  recalls: z.array(recallView),
  /** Repairs and whatever else follows this case. */
  followingCases: z.array(z.object({ id, number: z.string(), state: z.string(), title: deliveredText })),
  /** Adjustments that no spot asked for. */
  otherAdjustments: z.array(adjustmentView),
});
export type AftercareView = z.output<typeof aftercareView>;
