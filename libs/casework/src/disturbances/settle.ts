import { Disturbance, DisturbanceProposal, recordAudit } from '@archwright/records';
import type { EntityManager } from 'typeorm';

export interface Decision {
  readonly state: 'accepted' | 'kept' | 'withdrawn';
  /** Null where a calendar feed dropped the time. */
  readonly decidedBy: string | null;
  readonly details?: Readonly<Record<string, string>>;
}

/** Ends a disturbance, and with it every proposal that nobody accepted. */
export async function settle(
  tx: EntityManager,
  { id, version }: Pick<Disturbance, 'id' | 'version'>,
  { state, decidedBy, details = {} }: Decision,
  now: Date,
): Promise<void> {
  await tx.update(DisturbanceProposal, { disturbanceId: id, state: 'open' }, { state: 'superseded' });
  await tx.update(Disturbance, { id }, { state, decidedAt: now, decidedBy, version: version + 1 });
  await recordAudit(tx, {
    actorId: decidedBy,
    action: `disturbance-${state}`,
    subjectKind: 'disturbance',
    subjectId: id,
    details,
    at: now,
  });
}
