import { createDataSource } from '@archwright/records';
import type { DataSource } from 'typeorm';
import { loadDemoPractice } from '../../apps/cli/src/demo-practice/load-demo.js';
import type { UndoList } from '../../apps/cli/src/start/undo-list.js';
import { startTestDatabase } from '../../apps/cli/src/test/test-servers.js';

/** A Monday in winter, before anybody has opened. */
export const NOW = new Date('2027-01-04T07:00:00Z');

export interface BenchPractice {
  readonly databaseUrl: string;
  readonly db: DataSource;
}

/** The demonstration practice in a PostgreSQL of its own, without durability as in the tests. */
export async function openBenchPractice(undo: UndoList): Promise<BenchPractice> {
  const server = await startTestDatabase();
  await undo.add(() => server.stop());
  const databaseUrl = server.env['TEST_DATABASE_URL'] ?? '';
  const db = createDataSource({ url: databaseUrl, applicationName: 'archwright-bench', connections: 2 });
  await db.initialize();
  await undo.add(() => db.destroy());
  await loadDemoPractice(db, NOW);
  return { databaseUrl, db };
}
