import type { PathView, PublishPath } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { requireVersion } from '@archwright/platform';
import { parsePath } from '@archwright/protocol';
import { TreatmentPathVersion, TreatmentPathWithdrawal, recordAudit, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { hashOf } from '../planning/canonical.js';
import { viewPath } from './path-views.js';

class PathCodeError extends DomainError {
  constructor(code: string, found: unknown) {
    super(
      'casework.path-code',
      `The path says that it is ${JSON.stringify(found)}. Accepted: "${code}", as its address says.`,
    );
  }
}

/**
 * Publishes the next version of a path, or the first one of a new path. Cases that are open keep the version they follow.
 *
 * @param basedOn the version that was changed; 0 for a new path
 * @throws {PathInvalidError} with every fault of it
 * @throws {PreconditionFailedError} when somebody published another version meanwhile
 */
export async function publishPath(
  tx: EntityManager,
  actor: Actor,
  { code, basedOn, document }: { code: string; basedOn: number } & PublishPath,
  now: Date,
): Promise<PathView> {
  const publishedBy = personOf(actor, 'A path is published by a person.');
  await tx.query(
    `SELECT pg_advisory_xact_lock(hashtextextended('publish-path/' || current_setting('app.organisation_id'), 0))`,
  );
  const latest = await tx.maximum(TreatmentPathVersion, 'version', { code });
  requireVersion(basedOn, latest ?? 0);
  if (document.code !== code) throw new PathCodeError(code, document.code);
  const version = basedOn + 1;
  const path = parsePath({ ...document, version });
  const id = uuidv7();
  const documentHash = hashOf(path);
  await tx.insert(TreatmentPathVersion, {
    id,
    code,
    version,
    document: path,
    documentHash,
    publishedAt: now,
    publishedBy,
  });
  await audit(tx, publishedBy, 'path-published', id, now, { code, version });
  return viewPath(tx, id);
}

/** Keeps new cases from a version, or offers it to them again. Doing so again changes nothing. */
export async function setPathWithdrawn(
  tx: EntityManager,
  actor: Actor,
  { id, isWithdrawn }: { id: string; isWithdrawn: boolean },
  now: Date,
): Promise<PathView> {
  const withdrawnBy = personOf(actor, 'A path is withdrawn by a person.');
  const before = await viewPath(tx, id);
  if (before.isWithdrawn === isWithdrawn) return before;
  if (isWithdrawn) {
    await tx.query(
      `INSERT INTO treatment_path_withdrawal (id, path_version_id, withdrawn_at, withdrawn_by) VALUES ($1, $2, $3, $4)
       ON CONFLICT (organisation_id, path_version_id) DO NOTHING`,
      [uuidv7(), id, now, withdrawnBy],
    );
  } else await tx.delete(TreatmentPathWithdrawal, { pathVersionId: id });
  await audit(tx, withdrawnBy, isWithdrawn ? 'path-withdrawn' : 'path-offered-again', id, now, {});
  return viewPath(tx, id);
}

function audit(
  tx: EntityManager,
  actorId: string,
  action: string,
  subjectId: string,
  at: Date,
  details: Readonly<Record<string, unknown>>,
): Promise<void> {
  return recordAudit(tx, { actorId, action, subjectKind: 'treatment-path', subjectId, details, at });
}
