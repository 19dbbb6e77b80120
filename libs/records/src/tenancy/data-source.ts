import { DataSource } from 'typeorm';
import { entities } from '../entities.js';
import { SnakeNames } from './snake-names.js';

export interface DataSourceSettings {
  /** The application's login, which owns nothing. */
  readonly url: string;
  /** Shown in the server's list of sessions. */
  readonly applicationName: string;
  /** Most connections of this process. Each claim takes an advisory lock per resource and day: see `claim`. */
  readonly connections: number;
}

/** Not yet connected. The schema comes from the migrations alone: nothing here ever creates or changes a table. */
export function createDataSource({ url, applicationName, connections }: DataSourceSettings): DataSource {
  return new DataSource({
    type: 'postgres',
    url,
    applicationName,
    entities,
    namingStrategy: new SnakeNames(),
    synchronize: false,
    poolSize: connections,
  });
}
