import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isAlive } from '../embedded-postgres/process-table.js';
import { secretsOf } from '../embedded-postgres/secrets.js';
import { embeddedUrl } from './databases.js';

/** Lines of the file that PostgreSQL keeps while it runs, counted from 0 (PostgreSQL, "Database File Layout"). */
const PROCESS_LINE = 0;
const PORT_LINE = 3;

/**
 * The embedded database that another process runs over a data folder.
 *
 * @returns the address with the application's login, or null when none runs there
 */
export function runningDatabase(dataFolder: string): string | null {
  const holder = numberIn(join(dataFolder, 'running.pid'), 0);
  const pidFile = join(dataFolder, 'postgres', 'postmaster.pid');
  const server = numberIn(pidFile, PROCESS_LINE);
  const port = numberIn(pidFile, PORT_LINE);
  // A server whose starter was killed is an orphan: the next start stops it.
  if (holder === null || !isAlive(holder) || server === null || !isAlive(server) || port === null) return null;
  return embeddedUrl(port, secretsOf(dataFolder));
}

function numberIn(path: string, line: number): number | null {
  if (!existsSync(path)) return null;
  const number = Number.parseInt(readFileSync(path, 'utf8').split('\n')[line] ?? '', 10);
  return Number.isInteger(number) ? number : null;
}
