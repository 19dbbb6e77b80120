export { chooseBackend, type QueueBackend, type QueueLocation } from './backend.js';
export { defineJob, type JobDefinition } from './define-job.js';
export { addJob, Enqueuer, JobUnknownError } from './enqueuer.js';
export { handle, JobProcessor, WORKER_OPTIONS, type JobHandler } from './job-processor.js';
export { JobsModule } from './jobs.module.js';
export {
  checkStage,
  deliverNotice,
  deliverReminder,
  recheckStages,
  repairDisturbance,
  replanCase,
  screenCapture,
  screenSeries,
  searchWorkload,
} from './jobs.js';
export { migrateQueueSchema } from './migrate-queue.js';
export { ThreadsClosedError } from './threads/errors.js';
export { serveTasks } from './threads/serve-tasks.js';
export { ThreadCrew } from './threads/thread-crew.js';
export { threadEntry } from './threads/thread-entry.js';
export { ThreadPool, type TaskOptions } from './threads/thread-pool.js';
