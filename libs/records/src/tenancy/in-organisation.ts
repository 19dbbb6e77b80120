import { setTimeout as pause } from 'node:timers/promises';
import { DomainError } from '@archwright/kernel';
import type { DataSource, EntityManager } from 'typeorm';
import { isDatabaseError } from './database-error.js';

const ATTEMPTS = 5;
const FIRST_PAUSE_MS = 20;
/** serialization_failure and deadlock_detected (PostgreSQL, appendix A): the same work may pass when it is done again. */
const WORTH_ANOTHER_TRY = ['40001', '40P01'];
const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

/** What names the organisation is no identifier; nothing was asked of the database. */
export class OrganisationIdError extends DomainError {
  constructor(organisationId: string) {
    super('records.organisation-id', `"${organisationId}" is no organisation; a UUID names one.`, { organisationId });
  }
}

export type Work<Result> = (tx: EntityManager) => Promise<Result>;

/**
 * Does `work` in one transaction that sees and writes rows of one organisation only. The only way to rows of a tenant.
 *
 * A transaction that the server ended in favour of another is done again after a short random pause, five times at the
 * most: `work` must have no effect outside the database.
 *
 * @throws {OrganisationIdError} when `organisationId` is no UUID
 */
export function inOrganisation<Result>(db: DataSource, organisationId: string, work: Work<Result>): Promise<Result> {
  return withRetries(() => db.transaction((tx) => asOrganisation(tx, organisationId, work)));
}

/** Like `inOrganisation`, but all of `work` reads the database as it stood at one instant, and may not write. */
export function readInOrganisation<Result>(
  db: DataSource,
  organisationId: string,
  work: Work<Result>,
): Promise<Result> {
  return withRetries(() =>
    db.transaction('REPEATABLE READ', async (tx) => {
      await tx.query('SET TRANSACTION READ ONLY');
      return asOrganisation(tx, organisationId, work);
    }),
  );
}

/** Every organisation, for sweeps; each is then worked in by `inOrganisation`. */
export async function listOrganisations(db: DataSource): Promise<string[]> {
  const rows: { organisation_id: string }[] = await db.query(
    `SELECT organisation_id FROM directory WHERE kind = 'organisation' ORDER BY organisation_id`,
  );
  return rows.map((row) => row.organisation_id);
}

async function asOrganisation<Result>(tx: EntityManager, organisationId: string, work: Work<Result>): Promise<Result> {
  if (!UUID.test(organisationId)) throw new OrganisationIdError(organisationId);
  await tx.query(`SELECT set_config('app.organisation_id', $1, true)`, [organisationId]);
  return work(tx);
}

async function withRetries<Result>(transaction: () => Promise<Result>): Promise<Result> {
  for (let attempt = 1; ; attempt++) {
    try {
      return await transaction();
    } catch (error) {
      if (attempt === ATTEMPTS || !isDatabaseError(error, WORTH_ANOTHER_TRY)) throw error;
      await pause(Math.random() * FIRST_PAUSE_MS * 2 ** attempt);
    }
  }
}
