import { quoteSchemaName, runMigrations } from 'bullmq';
import type { Client } from 'pg';
import { QUEUE_SCHEMA } from './backend.js';

/**
 * Brings the queue's schema up to date and lets `role` use it; part of the migration step, never of a start.
 *
 * @param client a session of the provisioning login in the application's database
 */
export async function migrateQueueSchema(client: Client, role: string): Promise<void> {
  await runMigrations(client, QUEUE_SCHEMA);
  const schema = quoteSchemaName(QUEUE_SCHEMA);
  const grantee = client.escapeIdentifier(role);
  await client.query(`
    GRANT USAGE ON SCHEMA ${schema} TO ${grantee};
    GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA ${schema} TO ${grantee};
    GRANT USAGE ON ALL SEQUENCES IN SCHEMA ${schema} TO ${grantee};
    GRANT EXECUTE ON ALL FUNCTIONS IN SCHEMA ${schema} TO ${grantee}`);
}
