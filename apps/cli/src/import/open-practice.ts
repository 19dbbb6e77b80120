import { join } from 'node:path';
import { serviceActor, type Actor } from '@archwright/casework';
import { DomainError } from '@archwright/kernel';
import { requireHarmlessLogin, SharedClock, SystemClock } from '@archwright/platform';
import {
  attemptInOrganisation,
  createDataSource,
  inOrganisation,
  listOrganisations,
  Organisation,
  type Work,
} from '@archwright/records';
import type { DataSource } from 'typeorm';
import { callersPath } from '../arguments.js';
import { findDatabase } from '../start/find-database.js';
import { UndoList } from '../start/undo-list.js';

/** Where the practice is kept, and which one is meant. */
export interface PracticeOptions {
  readonly data: string;
  readonly organisation?: string | undefined;
}

/** The practice that a command works on. Nobody has signed in: who may run commands here may do all of it. */
export interface OpenPractice {
  readonly organisation: Organisation;
  readonly actor: Actor;
  readonly now: Date;
  readonly read: <Result>(work: Work<Result>) => Promise<Result>;
  /** Does `work` in one transaction, which is undone as a whole unless `isKept` says that its result may stay. */
  readonly attempt: <Result>(work: Work<Result>, isKept: (result: Result) => boolean) => Promise<Result>;
}

class PracticeUnknownError extends DomainError {
  constructor(reason: 'not-found' | 'unreachable', message: string) {
    super(`cli.practice-${reason}`, message);
  }
}

/**
 * Works on the practice of `DATABASE_URL`, else on that of the data folder: in the running service's database, or in one
 * that is started for this command and stopped afterwards.
 */
export async function inPractice<Result>(
  { data, organisation }: PracticeOptions,
  work: (practice: OpenPractice) => Promise<Result>,
): Promise<Result> {
  const undo = new UndoList();
  // Ending closes the connection, and with it undoes the transaction that is open.
  const stop = () => {
    void undo.undo().then(() => process.exit(1));
  };
  process.once('SIGINT', stop).once('SIGTERM', stop).once('SIGHUP', stop);
  try {
    const dataFolder = callersPath(data);
    const url = await findDatabase(dataFolder, undo);
    const clockFile = clockFileOf(dataFolder);
    const clock = clockFile === undefined ? new SystemClock(process.env.ARCHWRIGHT_CLOCK) : new SharedClock(clockFile);
    const db = await connect(url);
    try {
      const chosen = await choose(db, organisation);
      return await work({
        organisation: chosen,
        actor: serviceActor(chosen.id),
        now: clock.now(),
        read: (read) => inOrganisation(db, chosen.id, read),
        attempt: (attempted, isKept) => attemptInOrganisation(db, chosen.id, attempted, isKept),
      });
    } finally {
      await db.destroy();
    }
  } finally {
    await undo.undo();
    process.off('SIGINT', stop).off('SIGTERM', stop).off('SIGHUP', stop);
  }
}

/** The clock of a demonstration may have been moved on; it is shared through a file. */
function clockFileOf(dataFolder: string): string | undefined {
  const { DATABASE_URL: isElsewhere, ARCHWRIGHT_CLOCK_FILE: given } = process.env;
  return given ?? (isElsewhere ? undefined : join(dataFolder, 'clock'));
}

async function connect(url: string): Promise<DataSource> {
  const db = createDataSource({ url, applicationName: 'archwright-cli', connections: 2 });
  try {
    await db.initialize();
  } catch (error) {
    // The message of the driver may repeat the address with its password.
    const reason = error instanceof Error && 'code' in error ? String(error.code) : 'no answer';
    throw new PracticeUnknownError('unreachable', `The database can't be reached: ${reason}. Is the service running?`);
  }
  await requireHarmlessLogin((sql) => db.query(sql));
  return db;
}

async function choose(db: DataSource, wanted: string | undefined): Promise<Organisation> {
  const practices: Organisation[] = [];
  for (const id of await listOrganisations(db)) {
    const organisation = await inOrganisation(db, id, (tx) => tx.findOneByOrFail(Organisation, { id }));
    if (organisation.kind === 'practice') practices.push(organisation);
  }
  const chosen = practices.filter(({ id, name }) => wanted === undefined || wanted === id || wanted === name);
  const [first, second] = chosen;
  if (first !== undefined && second === undefined) return first;
  const names = practices.map(({ name }) => `"${name}"`).join(', ') || 'none is there yet';
  throw new PracticeUnknownError(
    'not-found',
    `${wanted === undefined ? 'It is not clear which practice is meant' : `There is no practice "${wanted}"`}. ` +
      `Accepted with --organisation: ${names}.`,
  );
}
