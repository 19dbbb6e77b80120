import { createSuiteDatabase } from './database.js';
import { startService, temporaryFolder } from './service.js';

/** A Monday in winter, an hour before the first visits of the day. */
const STARTS_AT = '2027-01-04T07:30:00Z';

/** The built product with the demonstration practice: API, worker and pages on a free port, over a database of its own. */
export interface DemoService {
  readonly url: string;
  /** The application's login to the database beneath. */
  readonly databaseUrl: string;
  stop(): Promise<void>;
}

/**
 * Starts what `npm start` starts, over a clone of the migrated template in place of a database server of its own.
 *
 * @param startsAt what the practice's clock shows at the start; it runs on from there
 */
export async function startDemoService(startsAt = STARTS_AT): Promise<DemoService> {
  const database = await createSuiteDatabase();
  const folder = temporaryFolder();
  const env = { DATABASE_URL: database.url, DATABASE_ADMIN_URL: '', QUEUE_URL: '', ARCHWRIGHT_CLOCK: startsAt };
  const service = await startService(folder.path, ['--no-cases'], env);
  return {
    url: service.url,
    databaseUrl: database.url,
    stop: async () => {
      await service.stop();
      await database.drop();
      folder.remove();
    },
  };
}
