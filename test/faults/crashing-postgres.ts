import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  startEmbeddedPostgres,
  type EmbeddedPostgres,
} from '../../apps/cli/src/embedded-postgres/embedded-postgres.js';
import { inDatabase, provision } from '../../apps/cli/src/provision.js';
import { temporaryFolder } from '../support/service.js';

/** A PostgreSQL of the suite's own, which keeps what it acknowledged, as in production. */
export class CrashingPostgres {
  private constructor(
    private readonly folder: ReturnType<typeof temporaryFolder>,
    private server: EmbeddedPostgres,
    /** The application's login. */
    readonly url: string,
  ) {}

  static async open(): Promise<CrashingPostgres> {
    const folder = temporaryFolder();
    const server = await startEmbeddedPostgres({ dataFolder: folder.path, isDurable: true });
    const login = `archwright_service:${server.secrets.appPassword}`;
    const url = inDatabase(`postgres://${login}@127.0.0.1:${String(server.port)}`, 'archwright');
    await provision({ adminUrl: server.adminUrl, databaseUrl: url });
    return new CrashingPostgres(folder, server, url);
  }

  /** Immediate shutdown: no transaction is ended, nothing is written out; the next start recovers from the log. */
  async crash(): Promise<void> {
    const pid = Number.parseInt(readFileSync(join(this.folder.path, 'postgres', 'postmaster.pid'), 'utf8'), 10);
    process.kill(pid, 'SIGQUIT');
    await this.server.ended;
    await this.server.stop(); // gives the folder back
  }

  async startAgain(): Promise<void> {
    const { port } = this.server;
    this.server = await startEmbeddedPostgres({ dataFolder: this.folder.path, isDurable: true, port });
  }

  async close(): Promise<void> {
    await this.server.stop();
    this.folder.remove();
  }
}
