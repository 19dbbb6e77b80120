import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { problem } from './problem.js';
import { said, told } from './told.js';
import { arch, id, instant, localDate, slug, stageCode } from './primitives.js';

/** One visit of a plan: a chair or the patient's home, a clinician and a time, and the stages it serves. */
export const plannedVisit = z.object({
  stages: z.array(stageCode),
  title: deliveredText,
  clinicId: id,
  clinicName: z.string(),
  zone: z.string(),
  clinicianId: id,
  clinicianName: z.string(),
  /** Null, with an empty label, for a visit at the patient's home. */
  chairId: id.nullable(),
  chairLabel: z.string(),
  /** The clinician's way to a patient at home, each way; null at the clinic. */
  homeTravelMinutes: z.int().nullable(),
  startsAt: instant,
  endsAt: instant,
  isDelivery: z.boolean(),
  isReview: z.boolean(),
  asWished: z.boolean(),
  /** Which wish it breaks, in words; empty when it breaks none. */
  againstWishes: z.array(said),
});

/** One laboratory step of a plan, on a named place. */
export const plannedLabStep = z.object({
  code: slug,
  title: deliveredText,
  arches: z.array(arch),
  afterStage: stageCode,
  beforeStage: stageCode,
  laboratoryId: id,
  laboratoryName: z.string(),
  workCentre: slug,
  /** Null, with an empty label, for a step that keeps no place taken. */
  placeId: id.nullable(),
  placeLabel: z.string(),
  startsAt: instant,
  endsAt: instant,
});

export const plannedTransport = z.object({
  direction: z.enum(['to-lab', 'to-clinic']),
  departsAt: instant,
  arrivesAt: instant,
});

/** A complete feasible plan, from the next visit through the first checks after placement. */
export const casePlan = z.object({
  visits: z.array(plannedVisit),
  labSteps: z.array(plannedLabStep),
  transports: z.array(plannedTransport),
  /** Null for a plan in which no denture is placed any more (reviews only). */
  deliveryOn: localDate.nullable(),
  /** What makes this plan good, one sentence each. */
  reasons: z.array(said),
  /** What it gives up against the wishes or against the other offers, one sentence each. */
  givesUp: z.array(said),
});
export type CasePlan = z.output<typeof casePlan>;

/** What a person has agreed to loosen so that a plan exists. */
const relaxations = z.strictObject({
  /** Days more for a longest wait, by the wait's code. */
  extraWaitDays: z.record(z.string(), z.int().min(1).max(120)).optional(),
  anyClinician: z.boolean().optional(),
  anyClinic: z.boolean().optional(),
  ignoreUnavailable: z.boolean().optional(),
});

/** A change that would make an impossible request possible, with the delivery date it would give. */
export const relaxation = z.object({
  code: slug,
  /** What has to be agreed to, all of it. */
  changes: z.array(said).min(1),
  /** The next request's `relax`: this relaxation on top of what was agreed to already; null when a laboratory decides. */
  apply: relaxations.nullable(),
  deliveryOn: localDate.nullable(),
});

export const whyNot = z.object({
  failingStage: deliveredText,
  sentence: z.string(),
  told,
  /** The smallest first; none where no single change and no two together would help. */
  relaxations: z.array(relaxation),
});
export type WhyNot = z.output<typeof whyNot>;

export const offer = z.object({ id, planHash: z.string(), label: z.string(), told, plan: casePlan });
export type Offer = z.output<typeof offer>;

export const requestOffers = z.strictObject({
  /** How many different offers; the answer may hold fewer. */
  count: z.int().min(1).max(5).default(3),
  notBefore: instant.optional(),
  clinicIds: z.array(id).max(20).optional(),
  /** A check after placement that is due: it gets a visit of its own, and nothing else is planned. */
  review: stageCode.optional(),
  /** Relaxations a person has agreed to, as given under `whyNot.relaxations[].apply`. */
  relax: relaxations.optional(),
});
export type RequestOffers = z.output<typeof requestOffers>;

export const offersView = z.object({ caseId: id, offers: z.array(offer), whyNot: whyNot.nullable() });
export type OffersView = z.output<typeof offersView>;

/** The 409 to a hold or its confirmation whose time is gone: what can be had now comes with it. */
export const offersConflict = problem.extend({ offers: offersView });

export const createHold = z.strictObject({
  offerId: id,
  /** `phone` lasts minutes, `provisional` 24 to 48 hours. */
  kind: z.enum(['phone', 'provisional']),
  minutes: z.int().min(1).max(2880).optional(),
});
export type CreateHold = z.output<typeof createHold>;

export const holdView = z.object({
  id,
  caseId: id,
  kind: z.enum(['phone', 'provisional']),
  state: z.enum(['active', 'confirmed', 'released', 'expired']),
  expiresAt: instant,
  planHash: z.string(),
  plan: casePlan,
});
export type HoldView = z.output<typeof holdView>;

export const confirmHold = z.strictObject({
  /** The hash of the plan the person saw; another one is answered with 409. */
  planHash: z.string().min(1),
  /** All visits, or the first n with the rest provisional. */
  firm: z.union([z.literal('all'), z.int().min(1).max(20)]).default('all'),
});
export type ConfirmHold = z.output<typeof confirmHold>;
