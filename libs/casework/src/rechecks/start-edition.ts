import { createHash } from 'node:crypto';
import { CHECK_RULES } from '@archwright/measures';
import { CheckEdition, enqueueOutbox, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { SHIPPED_VERSION, overlayInForce } from '../ranges/overlay-in-force.js';

/**
 * Has everything judged again once for each state of the rules and of the practice's ranges. A service of an older
 * version that still runs finds its own state known and starts nothing.
 *
 * @returns how many were started: one or none
 */
export async function startEdition(tx: EntityManager, organisationId: string, now: Date): Promise<number> {
  const fingerprint = fingerprintOf((await overlayInForce(tx))?.version ?? SHIPPED_VERSION);
  if (await tx.existsBy(CheckEdition, { fingerprint })) return 0;
  const editionId = uuidv7();
  const started: unknown[] = await tx.query(
    `INSERT INTO check_edition (id, fingerprint, started_at) VALUES ($1, $2, $3)
     ON CONFLICT (organisation_id, fingerprint) DO NOTHING RETURNING id`,
    [editionId, fingerprint, now],
  );
  if (started.length === 0) return 0;
  await enqueueOutbox(tx, 'recheck-stages', { organisationId, editionId }, now);
  return 1;
}

function fingerprintOf(rangesVersion: number): string {
  const rules = CHECK_RULES.map(({ code, version }) => `${code}:${String(version)}`).sort();
  const hash = createHash('sha256').update(rules.join(' ')).digest('hex').slice(0, 32);
  return `${hash}+p${String(rangesVersion)}`;
}
