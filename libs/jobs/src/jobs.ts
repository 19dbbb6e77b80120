import {
  checkStagePayload,
  deliverNoticePayload,
  deliverReminderPayload,
  replanCasePayload,
} from '@archwright/contracts';
import { defineJob } from './define-job.js';

/** Evaluate what was captured at a visit. Safe to run twice: a verdict is unique per capture. */
export const checkStage = defineJob({
  queue: 'checks',
  name: 'check-stage',
  payload: checkStagePayload,
  key: (payload) => `check-stage_${payload.captureId}`,
  attempts: 8,
});

/** Propose a new plan after a remake alert. Safe to run twice: the proposal is unique per alert. */
export const replanCase = defineJob({
  queue: 'planning',
  name: 'replan-case',
  payload: replanCasePayload,
  key: (payload) => `replan-case_${payload.alertId}`,
  attempts: 5,
});

/** Send one due reminder. A repeat carries the same message id. */
export const deliverReminder = defineJob({
  queue: 'reminders',
  name: 'deliver-reminder',
  payload: deliverReminderPayload,
  key: (payload) => `deliver-reminder_${payload.reminderId}`,
  attempts: 12,
});

/** Send one message that follows a change. A repeat carries the same message id. */
export const deliverNotice = defineJob({
  queue: 'notices',
  name: 'deliver-notice',
  payload: deliverNoticePayload,
  key: (payload) => `deliver-notice_${payload.noticeId}`,
  attempts: 12,
});

/** Every job there is, so that an outbox row can name one. */
export const JOBS = [checkStage, replanCase, deliverReminder, deliverNotice] as const;
export const QUEUES = [...new Set(JOBS.map((job) => job.queue))];
