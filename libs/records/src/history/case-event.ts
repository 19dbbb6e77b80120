import type { EntityManager } from 'typeorm';
import { uuidv7 } from '../uuidv7.js';

export interface NewCaseEvent {
  readonly caseId: string;
  /** Lower-case words joined by hyphens, such as `visit-moved`. */
  readonly kind: string;
  /** Ids and values, no identity. */
  readonly body: Readonly<Record<string, unknown>>;
  /** Null when the background service acts. */
  readonly actorId: string | null;
  readonly at: Date;
}

/** Adds a line to a case's history, in the transaction of the change. Writers of one case wait for each other. */
export async function appendCaseEvent(
  tx: EntityManager,
  { caseId, kind, body, actorId, at }: NewCaseEvent,
): Promise<void> {
  await tx.query('SELECT FROM treatment_case WHERE id = $1 FOR UPDATE', [caseId]);
  await tx.query(
    `INSERT INTO case_event (id, case_id, sequence, kind, body, actor_id, happened_at)
     SELECT $1, $2, coalesce(max(sequence), 0) + 1, $3, $4, $5, $6 FROM case_event WHERE case_id = $2`,
    [uuidv7(), caseId, kind, JSON.stringify(body), actorId, at],
  );
}
