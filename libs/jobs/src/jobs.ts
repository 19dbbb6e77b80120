import {
  checkStagePayload,
  deliverNoticePayload,
  deliverReminderPayload,
  repairDisturbancePayload,
  recheckStagesPayload,
  replanCasePayload,
  screenCapturePayload,
  screenSeriesPayload,
  searchWorkloadPayload,
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

/** Judge open cases by changed rules. Safe to run twice: a verdict that stays as it is is left alone. */
export const recheckStages = defineJob({
  queue: 'rechecks',
  name: 'recheck-stages',
  payload: recheckStagesPayload,
  key: (payload) => `recheck-stages_${payload.editionId}`,
  attempts: 5,
});

/** Compare a checked capture's values with others. Safe to run twice: a finding is unique per capture and subject. */
export const screenCapture = defineJob({
  queue: 'screening',
  name: 'screen-capture',
  payload: screenCapturePayload,
  key: (payload) => `screen-capture_${payload.captureId}`,
  attempts: 5,
});

/** Look over every series of a night. Safe to run twice: a finding is unique per series and the value that showed it. */
export const screenSeries = defineJob({
  queue: 'screening',
  name: 'screen-series',
  payload: screenSeriesPayload,
  key: (payload) => `screen-series_${payload.nightId}`,
  attempts: 5,
});

/** Propose a new plan after a remake alert. Safe to run twice: the proposal is unique per alert. */
export const replanCase = defineJob({
  queue: 'planning',
  name: 'replan-case',
  payload: replanCasePayload,
  key: (payload) => `replan-case_${payload.alertId}`,
  attempts: 5,
});

/** Propose plans for the cases that a disturbance breaks. Safe to run twice: new proposals supersede the earlier ones. */
export const repairDisturbance = defineJob({
  queue: 'planning',
  name: 'repair-disturbance',
  payload: repairDisturbancePayload,
  key: (payload) => `repair-disturbance_${payload.disturbanceId}`,
  attempts: 5,
});

/** Look for better plans of a laboratory's work. Safe to run twice: a run that has ended is left alone. */
export const searchWorkload = defineJob({
  queue: 'workload',
  name: 'search-workload',
  payload: searchWorkloadPayload,
  key: (payload) => `search-workload_${payload.runId}`,
  attempts: 3,
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
export const JOBS = [
  checkStage,
  recheckStages,
  screenCapture,
  screenSeries,
  replanCase,
  repairDisturbance,
  searchWorkload,
  deliverReminder,
  deliverNotice,
] as const;
export const QUEUES = [...new Set(JOBS.map((job) => job.queue))];
