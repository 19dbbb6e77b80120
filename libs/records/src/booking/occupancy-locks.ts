import { createHash } from 'node:crypto';
import type { EntityManager } from 'typeorm';

const DAY_MS = 86_400_000;

export interface ResourceTime {
  readonly resourceId: string;
  readonly startsAt: Date;
  readonly endsAt: Date;
}

/**
 * Takes the advisory lock of every resource and UTC day that the times touch, until the transaction ends, in one fixed
 * order: two chains that want the same resources wait for each other instead of deadlocking.
 */
export async function lockResourceDays(tx: EntityManager, times: readonly ResourceTime[]): Promise<void> {
  // A set-returning function in FROM keeps the array's order; sorting inside the statement would not have to.
  await tx.query('SELECT pg_advisory_xact_lock(key) FROM unnest($1::bigint[]) AS key', [lockKeys(times)]);
}

/** 64-bit keys, ascending, each once. Two resources that share a key merely wait for each other without need. */
export function lockKeys(times: readonly ResourceTime[]): string[] {
  const keys = new Set<bigint>();
  for (const { resourceId, startsAt, endsAt } of times) {
    const lastDay = Math.floor((endsAt.getTime() - 1) / DAY_MS);
    for (let day = Math.floor(startsAt.getTime() / DAY_MS); day <= lastDay; day++) {
      keys.add(
        createHash('sha256')
          .update(`${resourceId}/${String(day)}`)
          .digest()
          .readBigInt64BE(),
      );
    }
  }
  return [...keys].sort((a, b) => (a < b ? -1 : 1)).map(String);
}
