import { WORKER_OPTIONS } from '@archwright/jobs';

/**
 * A mail whose worker died goes out again after some ten seconds instead of the queue's thirty; a living worker renews
 * its lock while it waits for a slow mail server. Project defaults.
 */
export const MAIL_WORKER_OPTIONS = { ...WORKER_OPTIONS, lockDuration: 10_000, stalledInterval: 5_000 };
