import { createDataSource } from '@archwright/records';
import { DataSource } from 'typeorm';
import { createSuiteDatabase } from '../../support/database.js';

/** A suite's database: as the application sees it, and from behind the walls. */
export interface RecordsDatabase {
  readonly app: DataSource;
  readonly admin: DataSource;
  close(): Promise<void>;
}

export async function openRecordsDatabase(connections = 4): Promise<RecordsDatabase> {
  const database = await createSuiteDatabase();
  const app = await createDataSource({ url: database.url, applicationName: 'records-suite', connections }).initialize();
  const admin = await createDataSource({
    url: database.adminUrl,
    applicationName: 'records-suite',
    connections: 2,
  }).initialize();
  return {
    app,
    admin,
    close: async () => {
      await app.destroy();
      await admin.destroy();
      await database.drop();
    },
  };
}
