import { readArguments, UsageError } from './arguments.js';
import { provision } from './provision.js';

const USAGE = 'DATABASE_URL=... DATABASE_ADMIN_URL=... npm run --silent cli -- provision';

/** Makes or updates database, schema and the service's login on a server of your own. */
export async function provisionCommand(args: readonly string[]): Promise<number> {
  readArguments(args, USAGE, {});
  const { DATABASE_ADMIN_URL: adminUrl, DATABASE_URL: databaseUrl } = process.env;
  if (!adminUrl || !databaseUrl) throw new UsageError('DATABASE_ADMIN_URL and DATABASE_URL must both be set.', USAGE);
  await provision({ adminUrl, databaseUrl });
  process.stderr.write(`${new URL(databaseUrl).pathname.slice(1)} is ready.\n`);
  return 0;
}
