import { createDataSource, inOrganisation, listOrganisations } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { loadDemoPractice } from '../../../apps/cli/src/demo-practice/load-demo.js';
import { createSuiteDatabase } from '../../support/database.js';
import { NOW } from './demo-api.js';

/** The demonstration practice without a service: rows only. */
export interface DemoRows {
  readonly organisationId: string;
  work<Result>(work: (tx: EntityManager) => Promise<Result>): Promise<Result>;
  /** Queries that `work` sends. */
  countQueries(work: (tx: EntityManager) => Promise<unknown>): Promise<number>;
  close(): Promise<void>;
}

export async function openDemoRows(): Promise<DemoRows> {
  const database = await createSuiteDatabase();
  const settings = { url: database.url, applicationName: 'practice-suite', connections: 3 };
  const db = await createDataSource(settings).initialize();
  await loadDemoPractice(db, NOW);
  const [organisationId = ''] = await listOrganisations(db);
  return {
    organisationId,
    work: (work) => inOrganisation(db, organisationId, work),
    countQueries: (work) =>
      inOrganisation(db, organisationId, async (tx) => {
        let queries = 0;
        const runner = tx.queryRunner;
        if (runner === undefined) throw new Error('A transaction has a query runner.');
        const ask = runner.query.bind(runner);
        runner.query = (...given: Parameters<typeof ask>) => {
          queries++;
          return ask(...given);
        };
        await work(tx);
        runner.query = ask;
        return queries;
      }),
    close: async () => {
      await db.destroy();
      await database.drop();
    },
  };
}
