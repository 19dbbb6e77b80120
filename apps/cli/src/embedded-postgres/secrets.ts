import { randomBytes } from 'node:crypto';
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { EmbeddedPostgresError } from './embedded-postgres-error.js';

const secrets = z.object({ adminPassword: z.string(), appPassword: z.string(), sessionSecret: z.string() });
export type Secrets = z.output<typeof secrets>;

/** Passwords of one data folder, drawn once and kept in a file that only its owner may read. */
export function secretsOf(folder: string): Secrets {
  const path = join(folder, 'secrets.json');
  if (existsSync(path)) return secrets.parse(JSON.parse(readFileSync(path, 'utf8')));
  if (existsSync(join(folder, 'postgres', 'PG_VERSION'))) {
    throw new EmbeddedPostgresError(
      'secrets-missing',
      `${path} is missing, but ${join(folder, 'postgres')} holds a database whose password was in it. ` +
        'Put the file back, or choose another folder with --data FOLDER.',
      { folder },
    );
  }
  const draw = () => randomBytes(32).toString('base64url');
  const drawn = { adminPassword: draw(), appPassword: draw(), sessionSecret: draw() };
  writeFileSync(`${path}.new`, JSON.stringify(drawn), { mode: 0o600 });
  renameSync(`${path}.new`, path);
  return drawn;
}
