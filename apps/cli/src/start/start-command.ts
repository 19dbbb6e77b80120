import { createServer } from 'node:net';
import { join } from 'node:path';
import { DomainError } from '@archwright/kernel';
import { callersPath, readArguments, readPort } from '../arguments.js';
import { freePort } from '../embedded-postgres/free-port.js';
import { startMailCatcher } from '../mail-catcher.js';
import { startDatabase } from './databases.js';
import type { Demonstration, DemoPractice } from './demo-practice.js';
import { OwedWeeks, catchUp, playOwedWeeks, type FirstWeeks } from './first-weeks.js';
import { startService } from './service-process.js';
import { StoppedError, UndoList } from './undo-list.js';

const USAGE = 'npm start [-- [--port N] [--data FOLDER] [--no-demo | --no-cases]]';
const DEFAULT_PORT = 3000;

/** Somebody else listens where the service should. */
class PortTakenError extends DomainError {
  constructor(host: string, port: number) {
    super(
      'start.port-taken',
      `Port ${String(port)} of ${host} is in use by another program. Choose one with --port N, or --port 0 for a free one.`,
    );
  }
}

const say = (line = '') => process.stderr.write(`${line}\n`);

/**
 * Everything on this machine: database, schema, demonstration practice, worker, API with the web application. Runs until
 * a stop signal or until one of them ends by itself, and leaves no process behind.
 */
export async function startCommand(args: readonly string[], demonstration: Demonstration): Promise<number> {
  const { values } = readArguments(args, USAGE, {
    port: { type: 'string' },
    data: { type: 'string', default: '.data' },
    'no-demo': { type: 'boolean', default: false },
    'no-cases': { type: 'boolean', default: false },
  });
  const undo = new UndoList();
  const stopping = new AbortController();
  const stopped = new Promise<'stopped'>((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
      process.on(signal, () => {
        say('Stopping ...');
        stopping.abort();
        void undo.undo().then(() => {
          resolve('stopped');
        });
      });
    }
  });
  try {
    const host = process.env.HOST ?? '127.0.0.1';
    const port = await usablePort(host, readPort(values.port ?? process.env.PORT, USAGE) ?? DEFAULT_PORT);
    const demo = values['no-demo'] ? null : { ...demonstration, withCases: !values['no-cases'] };
    const place = { dataFolder: callersPath(values.data), host, port };
    const { ended } = await startAll(place, demo, undo, stopping.signal);
    const outcome = await Promise.race([stopped, ended]);
    if (outcome === 'stopped' || undo.hasBegun) {
      await undo.undo();
      return 0;
    }
    say(`${outcome}. Stopping the rest; start again to go on where it was.`);
    await undo.undo();
    return 1;
  } catch (error) {
    await undo.undo();
    if (error instanceof StoppedError) return 0;
    throw error;
  }
}

interface Place {
  readonly dataFolder: string;
  readonly host: string;
  readonly port: number;
}

interface WantedDemo extends Demonstration {
  /** With cases under way, not with people and places alone. */
  readonly withCases: boolean;
}

/** @returns `ended` settles when a part ends by itself */
async function startAll(
  { dataFolder, host, port }: Place,
  wanted: WantedDemo | null,
  undo: UndoList,
  signal: AbortSignal,
) {
  say('Starting the database ...');
  const database = await startDatabase(dataFolder, process.env, undo);
  const owed = new OwedWeeks(join(dataFolder, 'first-weeks'));
  const demo = wanted === null ? null : await loadDemo(wanted, database.databaseUrl, owed);
  const mail = demo === null ? {} : await catchMail(dataFolder, undo);
  // API and worker of the demonstration share a clock that its story may move on.
  const clockFile = join(dataFolder, 'clock');
  const clock: Record<string, string> =
    demo === null
      ? {}
      : { ARCHWRIGHT_CLOCK_FILE: clockFile, ...(demo.playsFrom ? { ARCHWRIGHT_CLOCK: demo.playsFrom } : {}) };
  const url = `http://${host}:${String(port)}`;
  const env = {
    LOG_LEVEL: 'warn',
    PUBLIC_URL: url,
    SESSION_SECRET: database.sessionSecret,
    ...mail,
    ...clock,
    ...given('LOG_LEVEL', 'PUBLIC_URL', 'SESSION_SECRET'),
    DATABASE_URL: database.databaseUrl,
    HOST: host,
    PORT: String(port),
  };
  if (wanted !== null && demo?.playsFrom === null) catchUp(clockFile, wanted.now());
  say('Starting worker and API ...');
  const worker = await startService('worker', env);
  await undo.add(() => worker.stop());
  const api = await startService('api', env);
  await undo.add(() => api.stop());
  if (wanted !== null && demo?.playsFrom) {
    const play = (weeks: FirstWeeks) => wanted.playFirstWeeks(url, weeks);
    await playOwedWeeks({ owed, clockFile, now: wanted.now, play, signal, say });
  }
  if (undo.hasBegun) throw new StoppedError();
  introduce(env.PUBLIC_URL, demo);
  const ended = Promise.race([
    database.ended.then((how) => `PostgreSQL ${how}`),
    worker.ended.then((how) => `The worker ${how}`),
    api.ended.then((how) => `The API ${how}`),
  ]);
  return { ended };
}

/** @returns with `playsFrom` the instant at which its first cases begin, when they are still to be treated */
async function loadDemo({ load, now, firstWeeksMs, withCases }: WantedDemo, databaseUrl: string, owed: OwedWeeks) {
  const begun = owed.from();
  const from = withCases ? (begun ?? new Date(now().getTime() - firstWeeksMs)) : now();
  if (withCases && begun === null) owed.owe(from);
  say('Loading the demonstration practice ...');
  const practice = await load(databaseUrl, from);
  if (!practice.isNew) {
    say('It was there already.');
    if (begun === null) owed.settle();
  }
  return { ...practice, playsFrom: withCases ? (owed.from()?.toISOString() ?? null) : null };
}

/** Mail of the demonstration goes to people who don't exist, so it is caught unless a server was named. */
async function catchMail(dataFolder: string, undo: UndoList): Promise<Record<string, string>> {
  if (process.env.SMTP_URL) return {};
  const catcher = await startMailCatcher(join(dataFolder, 'caught-mail'));
  await undo.add(() => catcher.stop());
  return { SMTP_URL: catcher.smtpUrl, MAIL_CATCHER_URL: catcher.httpUrl };
}

function given(...names: string[]): Record<string, string> {
  return Object.fromEntries(names.flatMap((name) => (process.env[name] ? [[name, process.env[name]]] : [])));
}

async function usablePort(host: string, port: number): Promise<number> {
  if (port === 0) return freePort();
  const isFree = await new Promise<boolean>((resolve) => {
    const probe = createServer();
    probe.once('error', () => {
      resolve(false);
    });
    probe.listen(port, host, () =>
      probe.close(() => {
        resolve(true);
      }),
    );
  });
  if (!isFree) throw new PortTakenError(host, port);
  return port;
}

function introduce(url: string, demo: DemoPractice | null): void {
  say();
  say(`Archwright is ready at ${url}`);
  if (demo !== null) {
    say('Sign in as:');
    for (const { role, login, password } of demo.accounts) say(`  ${role.padEnd(14)} ${login}   ${password}`);
    for (const step of demo.firstSteps) say(step);
  }
  say('Ctrl-C stops everything.');
}
