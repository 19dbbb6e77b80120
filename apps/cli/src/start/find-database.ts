import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { DomainError } from '@archwright/kernel';
import { startDatabase } from './databases.js';
import { runningDatabase } from './running-database.js';
import type { UndoList } from './undo-list.js';

/** There is no installation where the command looked. */
class NoDatabaseError extends DomainError {
  constructor(dataFolder: string) {
    super(
      'cli.database-not-found',
      `There is no practice in ${dataFolder}. Accepted: a folder that "npm start" has filled (--data FOLDER), or DATABASE_URL.`,
    );
  }
}

/**
 * The database that a command works on, with the application's login: the one of `DATABASE_URL`, else that of the data
 * folder, where it is started for the command when no service runs over it.
 *
 * @throws {NoDatabaseError} when the folder holds none
 */
export async function findDatabase(dataFolder: string, undo: UndoList): Promise<string> {
  if (process.env.DATABASE_URL) return process.env.DATABASE_URL;
  const running = runningDatabase(dataFolder);
  if (running !== null) return running;
  if (!existsSync(join(dataFolder, 'postgres'))) throw new NoDatabaseError(dataFolder);
  process.stderr.write('Starting the database for this command ...\n');
  const { databaseUrl } = await startDatabase(dataFolder, {}, undo);
  return databaseUrl;
}
