import { startOfDayMs } from '@archwright/calendar';
import { RequestInvalidError } from '@archwright/platform';
import { isToCome, type CaseChain, type CaseProgress, type PlanRequest } from '@archwright/protocol';
import { Recall } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';

/** Checks after placement that get a visit of their own, besides the chain. */
export interface DueReviews {
  /** The one that somebody asks for, with the date from which it is due. */
  readonly asked: { readonly stage: string; readonly dueOn: string } | null;
  /** Stages to plan: the one asked for, and those whose visit is booked. */
  readonly stages: ReadonlySet<string>;
}

/**
 * @throws {RequestInvalidError} for a check that is not due, naming those that are
 */
export async function loadDueReviews(
  tx: EntityManager,
  caseId: string,
  asked: string | undefined,
): Promise<DueReviews> {
  const recalls = await tx.findBy(Recall, { caseId, state: In(['due', 'booked']) });
  const due = recalls.filter(({ state }) => state === 'due');
  const wanted = due.find(({ kind }) => kind === asked);
  if (asked !== undefined && wanted === undefined) {
    const accepted = due.length === 0 ? 'none is due' : due.map(({ kind }) => kind).join(', ');
    throw new RequestInvalidError([{ path: 'review', problem: `${asked} is not due`, accepted }]);
  }
  const planned = recalls.filter((recall) => recall === wanted || recall.state === 'booked');
  return {
    asked: wanted === undefined ? null : { stage: wanted.kind, dueOn: wanted.dueOn },
    stages: new Set(planned.map(({ kind }) => kind)),
  };
}

/** The chain in which these checks are planned like any other visit. */
export function withReviews(chain: CaseChain, { stages }: DueReviews): CaseChain {
  if (stages.size === 0) return chain;
  return {
    ...chain,
    stages: chain.stages.map((stage) => (stages.has(stage.code) ? { ...stage, chained: true } : stage)),
  };
}

/** Where a check is asked for, nothing else is planned: a first check that nobody booked holds up no recall. */
export function onlyReview(progress: CaseProgress, { asked }: DueReviews, booked: readonly string[]): CaseProgress {
  if (asked === null) return progress;
  return {
    ...progress,
    stages: progress.stages.map((row) =>
      isToCome(row.state) && row.code !== asked.stage && !booked.includes(row.code)
        ? { ...row, state: 'dropped' as const }
        : row,
    ),
  };
}

/** The due date stands in the place of the path's usual window, which may have passed. */
export function waitsForReviews(chain: CaseChain, { stages }: DueReviews): PlanRequest['lagOverrides'] {
  const own = chain.lags.filter(({ to }) => stages.has(to));
  return Object.fromEntries(own.map(({ code }) => [code, { min: null, max: null }]));
}

/** A check that is asked for is planned from its due date on. */
export const dueFromMs = ({ asked }: DueReviews, zone: string): number | null =>
  asked === null ? null : startOfDayMs(asked.dueOn, zone);
