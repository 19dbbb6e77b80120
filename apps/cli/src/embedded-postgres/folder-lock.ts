import { closeSync, existsSync, mkdirSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { EmbeddedPostgresError } from './embedded-postgres-error.js';
import { commandLineOf, isAlive } from './process-table.js';

/**
 * Takes a data folder for this process, so that a second start on it is refused.
 *
 * @returns gives the folder back
 * @throws {EmbeddedPostgresError} `folder-in-use` while another live process holds it
 */
export function lockFolder(folder: string): () => void {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, 'running.pid');
  const holder = existsSync(path) ? Number.parseInt(readFileSync(path, 'utf8'), 10) : undefined;
  if (holder !== undefined && Number.isInteger(holder) && isHolding(holder)) {
    throw new EmbeddedPostgresError(
      'folder-in-use',
      `The data folder ${folder} is in use by process ${String(holder)}. Stop that one first (Ctrl-C in its window, or ` +
        `"kill ${String(holder)}"), or choose another folder with --data FOLDER.`,
      { folder, pid: holder },
    );
  }
  rmSync(path, { force: true });
  const file = openSync(path, 'wx', 0o644); // fails when another start came between
  writeSync(file, `${String(process.pid)}\n`);
  closeSync(file);
  return () => {
    rmSync(path, { force: true });
  };
}

/** A number from before a restart of the machine may belong to any program by now. */
function isHolding(pid: number): boolean {
  if (pid === process.pid || !isAlive(pid)) return false;
  return commandLineOf(pid)?.includes('node') ?? true;
}
