import { join } from 'node:path';
import { createDataSource, inOrganisation, listOrganisations } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { loadDemoPractice } from '../../apps/cli/src/demo-practice/load-demo.js';
import { freePort } from '../../apps/cli/src/embedded-postgres/free-port.js';
import { temporaryFolder } from '../support/service.js';
import { ServiceProcess } from '../support/service-process.js';
import { StubbornClient } from './stubborn-client.js';

/** A Monday in winter, before anybody has opened. */
const NOW = new Date('2027-01-04T07:00:00Z');

/** The demonstration practice in a database, with an API and a worker to kill. */
export interface DemoService {
  readonly url: string;
  readonly api: ServiceProcess;
  readonly worker: ServiceProcess;
  signIn(name: string): Promise<StubbornClient>;
  /** Looks at rows as the application's own login. */
  rows<Row>(sql: string, parameters?: unknown[]): Promise<Row[]>;
  close(): Promise<void>;
}

/** @param smtpUrl where the worker's mail goes */
export async function openDemoService(databaseUrl: string, smtpUrl: string): Promise<DemoService> {
  const folder = temporaryFolder();
  const settings = { url: databaseUrl, applicationName: 'faults-suite', connections: 2 };
  const db = await createDataSource(settings).initialize();
  await loadDemoPractice(db, NOW);
  const [organisationId = ''] = await listOrganisations(db);
  const port = await freePort();
  const url = `http://127.0.0.1:${String(port)}`;
  const env = {
    DATABASE_URL: databaseUrl,
    SESSION_SECRET: 'a-secret-of-the-tests-long-enough-for-it',
    SMTP_URL: smtpUrl,
    // In a file, so that a service that is started again goes on where it was.
    ARCHWRIGHT_CLOCK: NOW.toISOString(),
    ARCHWRIGHT_CLOCK_FILE: join(folder.path, 'clock'),
    PORT: String(port),
  };
  const api = new ServiceProcess('api', env);
  const worker = new ServiceProcess('worker', env);
  return {
    url,
    api,
    worker,
    signIn: async (name) => {
      const client = new StubbornClient(url);
      await client.signIn(name);
      return client;
    },
    rows: (sql, parameters = []) =>
      inOrganisation(db, organisationId, (tx: EntityManager) => tx.query(sql, parameters)),
    close: async () => {
      await Promise.all([api.stop(), worker.stop()]);
      await db.destroy();
      folder.remove();
    },
  };
}
