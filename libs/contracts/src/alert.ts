import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { arch, id, instant, sentence, slug, stageCode, version, zoneName } from './primitives.js';
import { ripple } from './appointment.js';

export const alertState = z.enum(['open', 'planned', 'accepted', 'dismissed']);

/** Something has to be made again: where to go back to, what is discarded, and the plans that would repair it. */
export const remakeAlertView = z.object({
  id,
  version,
  caseId: id,
  caseNumber: z.string(),
  patientName: z.string(),
  stage: stageCode,
  stageTitle: deliveredText,
  trigger: slug,
  reason: z.string(),
  /** A visit or a laboratory step, as the path names it. */
  returnToStage: stageCode,
  returnToTitle: deliveredText,
  arches: z.array(arch),
  discards: z.array(deliveredText),
  state: alertState,
  raisedAt: instant,
  /** Decide by this instant: the start of the next thing that cannot be undone. Null when none is planned. */
  decideBy: instant.nullable(),
  /** IANA zone of the case's clinic, for `raisedAt` and `decideBy`. */
  zone: zoneName,
  proposals: z.array(
    z.object({
      id,
      /** Hash of the whole proposal, every case's part of it: sent back to accept exactly what was shown. */
      planHash: z.string(),
      label: z.string(),
      movedVisits: z.int(),
      /** No plan moves fewer visits than this. */
      leastMovedVisits: z.int(),
      otherCases: z.int(),
      ripples: z.array(ripple),
    }),
  ),
  /** Set while no proposal exists yet, or when none could be found, with the reason. */
  noProposalReason: z.string().nullable(),
});
export type RemakeAlertView = z.output<typeof remakeAlertView>;

export const alertQuery = z.strictObject({
  state: alertState.optional(),
  cursor: z.string().max(500).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(20),
});
export type AlertQuery = z.output<typeof alertQuery>;

export const alertPage = z.object({ items: z.array(remakeAlertView), next: z.string().nullable() });
export type AlertPage = z.output<typeof alertPage>;

/** What a clinician sends to say that a stage must be made again. */
export const openRemakeAlert = z.strictObject({
  caseId: id,
  stage: stageCode,
  trigger: slug,
  reason: sentence,
});
export type OpenRemakeAlert = z.output<typeof openRemakeAlert>;

export const acceptProposal = z.strictObject({
  proposalId: id,
  /** `planHash` of the proposal, not of one of its ripples; another one is answered with 409. */
  planHash: z.string().min(1),
});
export type AcceptProposal = z.output<typeof acceptProposal>;

export const dismissAlert = z.strictObject({ reason: sentence });
export type DismissAlert = z.output<typeof dismissAlert>;
