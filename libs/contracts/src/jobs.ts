import { z } from 'zod';
import { id } from './primitives.js';

/** Job payloads hold ids only: the row is read when the job runs. */
export const checkStagePayload = z.strictObject({ organisationId: id, stageId: id, captureId: id });
export type CheckStagePayload = z.output<typeof checkStagePayload>;

export const screenCapturePayload = z.strictObject({ organisationId: id, captureId: id });
export type ScreenCapturePayload = z.output<typeof screenCapturePayload>;

export const screenSeriesPayload = z.strictObject({ organisationId: id, nightId: id });
export type ScreenSeriesPayload = z.output<typeof screenSeriesPayload>;

/** An edition: one state of the rules and of the practice's ranges. */
export const recheckStagesPayload = z.strictObject({ organisationId: id, editionId: id });
export type RecheckStagesPayload = z.output<typeof recheckStagesPayload>;

export const replanCasePayload = z.strictObject({ organisationId: id, alertId: id });
export type ReplanCasePayload = z.output<typeof replanCasePayload>;

export const repairDisturbancePayload = z.strictObject({ organisationId: id, disturbanceId: id });
export type RepairDisturbancePayload = z.output<typeof repairDisturbancePayload>;

export const searchWorkloadPayload = z.strictObject({ organisationId: id, runId: id });
export type SearchWorkloadPayload = z.output<typeof searchWorkloadPayload>;

export const deliverReminderPayload = z.strictObject({ organisationId: id, reminderId: id });
export type DeliverReminderPayload = z.output<typeof deliverReminderPayload>;

/** A message that follows a change at once: confirmation, move, cancellation, alert. */
export const deliverNoticePayload = z.strictObject({ organisationId: id, noticeId: id });
export type DeliverNoticePayload = z.output<typeof deliverNoticePayload>;
