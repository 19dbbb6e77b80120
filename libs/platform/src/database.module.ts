import { Inject, Module, type DynamicModule, type OnApplicationShutdown } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { requireHarmlessLogin } from './database-login.js';

/** The process's one pool of connections, opened with a login that row-level security binds. */
@Module({})
export class DatabaseModule implements OnApplicationShutdown {
  constructor(@Inject(DataSource) private readonly source: DataSource) {}

  static forRoot(source: DataSource): DynamicModule {
    return {
      module: DatabaseModule,
      global: true,
      providers: [{ provide: DataSource, useFactory: () => opened(source) }],
      exports: [DataSource],
    };
  }

  onApplicationShutdown(): Promise<void> {
    return this.source.destroy();
  }
}

async function opened(source: DataSource): Promise<DataSource> {
  await source.initialize();
  try {
    await requireHarmlessLogin((sql) => source.query(sql));
    return source;
  } catch (error) {
    await source.destroy();
    throw error;
  }
}
