import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { until } from '../../support/until.js';
import { openCommandLine, type CommandLine } from './command-line.js';

const CALENDAR = join(process.cwd(), 'test/e2e/import/nasty.ics');
const COMMANDS = {
  patients: ['import', 'patients', 'many.csv'],
  calendar: ['import', 'calendar', CALENDAR, '--resource', 'Chair 2', '--from', '1997-09-01', '--until', '1998-01-01'],
} as const;

/** More rows than are written at once. */
function writeManyPatients(folder: string): void {
  const rows = Array.from({ length: 700 }, (_, index) => {
    const number = String(index + 1);
    return `K-${number},Given-${number},Killed-Example,1950-01-01,mail`;
  });
  writeFileSync(
    join(folder, 'many.csv'),
    ['reference,given name,family name,birth date,reminder consent', ...rows].join('\n'),
  );
}

/** What the imports leave behind, without ids and times, which each run draws anew. */
async function leftBehind(line: CommandLine): Promise<unknown> {
  return line.rows(async (tx) => {
    const table = (sql: string): Promise<unknown[]> => tx.query(sql);
    return [
      await table(
        `SELECT i.given_name, i.family_name, i.birth_on::text, i.import_key, p.version, r.kind, count(c.id)::integer AS consents
       FROM patient_identity i JOIN patient p ON p.id = i.patient_id JOIN resource r ON r.id = p.id
       LEFT JOIN consent c ON c.patient_id = p.id GROUP BY 1, 2, 3, 4, 5, 6 ORDER BY i.import_key, i.family_name, i.given_name`,
      ),
      await table(`SELECT action, count(*)::integer FROM audit_entry GROUP BY action ORDER BY action`),
      await table(`SELECT source_uid, starts_at::text, ends_at::text FROM closure ORDER BY 2, 1`),
      await table(`SELECT starts_at::text, ends_at::text, purpose FROM occupancy ORDER BY 1`),
      await table(`SELECT source, content_hash FROM imported_calendar`),
    ];
  });
}

/** Runs a command until it waits for `table`, which a stranger holds, and kills it outright there. */
async function killAt(line: CommandLine, table: string, args: readonly string[]): Promise<void> {
  const stranger = await connected(line);
  // Within a transaction the list of sessions stands still, so that somebody else has to look.
  const watcher = await connected(line);
  const sessions = async (state: string) => {
    const { rows } = await watcher.query<{ count: number }>(
      `SELECT count(*)::integer AS count FROM pg_stat_activity
       WHERE datname = current_database() AND application_name = 'archwright-cli' AND ${state}`,
    );
    return rows[0]?.count ?? 0;
  };
  await stranger.query(`BEGIN; LOCK TABLE ${stranger.escapeIdentifier(table)} IN EXCLUSIVE MODE`);
  const { child, ended, said } = line.start(...args);
  try {
    await until(async () => child.exitCode !== null || (await sessions(`wait_event_type = 'Lock'`)) > 0);
    if (child.exitCode !== null) throw new Error(`It ended before it came to ${table}:\n${said()}`);
  } finally {
    child.kill('SIGKILL');
    await ended;
    await stranger.end();
  }
  await until(async () => (await sessions('true')) === 0);
  await watcher.end();
}

async function connected({ database }: CommandLine): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: database.adminUrl });
  await client.connect();
  return client;
}

describe('an import that is killed outright', () => {
  let line: CommandLine;
  let uninterrupted: unknown;
  beforeAll(async () => {
    const undisturbed = await openCommandLine();
    writeManyPatients(undisturbed.folder);
    await undisturbed.run(...COMMANDS.patients);
    await undisturbed.run(...COMMANDS.calendar);
    uninterrupted = await leftBehind(undisturbed);
    await undisturbed.close();
    line = await openCommandLine();
    writeManyPatients(line.folder);
  }, 90_000);
  afterAll(() => line.close());

  it.each([
    ['patients', 'resource'],
    ['patients', 'patient_identity'],
    ['patients', 'consent'],
    ['patients', 'audit_entry'],
    ['calendar', 'imported_calendar'],
    ['calendar', 'closure'],
    ['calendar', 'occupancy'],
    ['calendar', 'audit_entry'],
  ] as const)('leaves nothing half-done: %s, at the table %s', async (command, table) => {
    const before = await leftBehind(line);
    await killAt(line, table, COMMANDS[command]);
    expect(await leftBehind(line)).toEqual(before);
  });

  it('ends as if nothing had happened when it is started again', async () => {
    expect((await line.run(...COMMANDS.patients)).answer).toContain('added 700');
    await line.run(...COMMANDS.calendar);
    expect(await leftBehind(line)).toEqual(uninterrupted);
  }, 60_000);
});
