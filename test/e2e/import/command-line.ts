import { createDataSource, inOrganisation, listOrganisations, type Work } from '@archwright/records';
import { loadDemoPractice } from '../../../apps/cli/src/demo-practice/load-demo.js';
import { createSuiteDatabase, type SuiteDatabase } from '../../support/database.js';
import { runCommandLine, temporaryFolder } from '../../support/service.js';
import { NOW } from '../practice/demo-api.js';

export interface Outcome {
  readonly code: number | null;
  /** Standard output: the answer alone. */
  readonly answer: string;
  /** Both outputs. */
  readonly said: string;
}

/** The demonstration practice in a database of its own, and the command line over it. */
export interface CommandLine {
  readonly database: SuiteDatabase;
  /** A folder for files, where the caller stands. */
  readonly folder: string;
  run(...args: readonly string[]): Promise<Outcome>;
  start(...args: readonly string[]): ReturnType<typeof runCommandLine>;
  rows<Result>(work: Work<Result>): Promise<Result>;
  close(): Promise<void>;
}

export async function openCommandLine(): Promise<CommandLine> {
  const database = await createSuiteDatabase();
  const settings = { url: database.url, applicationName: 'import-suite', connections: 2 };
  const db = await createDataSource(settings).initialize();
  await loadDemoPractice(db, NOW);
  const [organisationId = ''] = await listOrganisations(db);
  const folder = temporaryFolder();
  const env = { DATABASE_URL: database.url, ARCHWRIGHT_CLOCK: NOW.toISOString(), INIT_CWD: folder.path };
  const start = (...args: readonly string[]) => runCommandLine(args, env);
  return {
    database,
    folder: folder.path,
    start,
    run: async (...args) => {
      const { ended, answered, said } = start(...args);
      return { code: await ended, answer: answered(), said: said() };
    },
    rows: (work) => inOrganisation(db, organisationId, work),
    close: async () => {
      await db.destroy();
      await database.drop();
      folder.remove();
    },
  };
}
