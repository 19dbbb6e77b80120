import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { arch, id, instant, slug } from './primitives.js';

const pathSummary = z.object({
  id,
  code: slug,
  version: z.int(),
  title: deliveredText,
  arches: z.array(arch),
  visits: z.int(),
  publishedAt: instant,
  /** Null: it came with the application. */
  publishedBy: z.string().nullable(),
  /** New cases may not follow it any more; open ones go on. */
  isWithdrawn: z.boolean(),
  isLatest: z.boolean(),
  openCases: z.int(),
});
export type PathSummary = z.output<typeof pathSummary>;

/** Every published version, by code and then the latest first. */
export const pathList = z.object({ items: z.array(pathSummary) });
export type PathList = z.output<typeof pathList>;

/** The document is a path of the protocol, whose schema only its readers load: a first view would pay for it. */
const pathDocument = z.record(z.string(), z.unknown());

export const pathView = pathSummary.extend({ document: pathDocument });
export type PathView = z.output<typeof pathView>;

/**
 * A version to publish. What is in it is checked as a whole, and every fault is named; the number of the version is given
 * by the service.
 */
export const publishPath = z.strictObject({ document: pathDocument });
export type PublishPath = z.output<typeof publishPath>;

export const setWithdrawal = z.strictObject({ isWithdrawn: z.boolean() });
export type SetWithdrawal = z.output<typeof setWithdrawal>;
