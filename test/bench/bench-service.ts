import { freePort } from '../../apps/cli/src/embedded-postgres/free-port.js';
import { startService } from '../../apps/cli/src/start/service-process.js';
import type { UndoList } from '../../apps/cli/src/start/undo-list.js';
import { NOW } from './bench-practice.js';

/** The built API with its pages over the database of a bench; answers its address. */
export async function startBenchApi(databaseUrl: string, undo: UndoList): Promise<string> {
  const port = await freePort();
  const api = await startService('api', {
    DATABASE_URL: databaseUrl,
    SESSION_SECRET: 'a-secret-of-the-bench-long-enough-for-it',
    LOG_LEVEL: 'silent',
    PORT: String(port),
    ARCHWRIGHT_CLOCK: NOW.toISOString(),
  });
  await undo.add(() => api.stop());
  return `http://127.0.0.1:${String(port)}`;
}
