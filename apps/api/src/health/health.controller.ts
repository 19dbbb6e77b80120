import { Controller, Get } from '@nestjs/common';
import { DomainError } from '@archwright/kernel';
import { Public } from '@archwright/platform';
import { DataSource } from 'typeorm';
import { migrations } from '../../../../migrations/index.js';

const ANSWER_WITHIN_MS = 1_500;

/** The process runs, but can't do its work now. */
class NotReadyError extends DomainError {
  constructor(why: string) {
    super('health.unavailable', `The service can't take requests now: ${why}.`);
  }
}

/** For whatever watches the process: live says that it runs, ready that it can work. */
@Public()
@Controller('health')
export class HealthController {
  constructor(private readonly database: DataSource) {}

  @Get('live')
  live(): { status: 'live' } {
    return { status: 'live' };
  }

  @Get('ready')
  async ready(): Promise<{ status: 'ready' }> {
    const missing = await this.missingMigrations();
    if (missing > 0) throw new NotReadyError(`${String(missing)} migrations have not run; run the provisioning step`);
    return { status: 'ready' };
  }

  private async missingMigrations(): Promise<number> {
    const late = new Promise<never>((_, reject) =>
      setTimeout(() => {
        reject(new NotReadyError('the database does not answer'));
      }, ANSWER_WITHIN_MS).unref(),
    );
    const asked = this.database.query<{ name: string }[]>('SELECT name FROM migrations').catch(() => {
      throw new NotReadyError('the database can not be reached or holds no schema');
    });
    const done = new Set((await Promise.race([asked, late])).map(({ name }) => name));
    return migrations.filter(({ name }) => !done.has(name)).length;
  }
}
