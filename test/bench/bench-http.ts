import { fork, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import autocannon from 'autocannon';
import { practiceView } from '@archwright/contracts';
import { ApiSession } from '../../apps/cli/src/demo/api-session.js';
import { demoPassword } from '../../apps/cli/src/demo/scenario.js';
import { UndoList } from '../../apps/cli/src/start/undo-list.js';
import { book } from './bench-booking.js';
import { openBenchPractice } from './bench-practice.js';
import { startBenchApi } from './bench-service.js';
import { ms, percentile, table } from './figures.js';

const SECONDS = 10;
const CONNECTIONS = 8;
const BOOKINGS = 40;
const DESK = 'desk@example.test';

/** Requests per second of the stage board and of booking, beside a bare handler of the same framework. */
export async function benchHttp(): Promise<string> {
  const undo = new UndoList();
  try {
    const { databaseUrl } = await openBenchPractice(undo);
    const url = await startBenchApi(databaseUrl, undo);
    const desk = new ApiSession(url);
    await desk.signIn(DESK, demoPassword);
    const practice = await desk.call({ method: 'GET', path: '/practice', answer: practiceView });
    const booked: number[] = [];
    const days: string[] = [];
    for (let booking = 0; booking < BOOKINGS; booking++) days.push((await book(desk, practice, booked)).day);
    const busiest = mostFrequent(days);
    const board = `${url}/api/v1/stage-board?on=${busiest}&clinicId=${practice.clinics[0]?.id ?? ''}`;
    const bare = await load(`${await startBare(undo)}/bare`, '');
    return table(
      ['what', 'requests/s', 'p50, ms', 'p99, ms', 'requests', 'not 2xx'],
      [
        loadRow(`bare handler, ${String(CONNECTIONS)} connections`, bare),
        loadRow(
          `stage board of ${busiest}, ${String(CONNECTIONS)} connections`,
          await load(board, await cookieOf(url)),
        ),
        bookingRow(booked),
      ],
    );
  } finally {
    await undo.undo();
  }
}

async function startBare(undo: UndoList): Promise<string> {
  const [, main = ''] = process.argv;
  const child: ChildProcess = fork(main, ['bench', 'bare'], { stdio: ['ignore', 2, 2, 'ipc'] });
  await undo.add(async () => {
    if (child.exitCode !== null) return;
    child.kill();
    await once(child, 'exit');
  });
  const [url] = (await once(child, 'message')) as [string];
  return url;
}

function mostFrequent(days: readonly string[]): string {
  const count = (day: string) => days.filter((each) => each === day).length;
  return days.reduce((most, day) => (count(day) > count(most) ? day : most));
}

async function cookieOf(url: string): Promise<string> {
  const response = await fetch(`${url}/api/v1/sessions`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ signInName: DESK, password: demoPassword }),
  });
  return response.headers
    .getSetCookie()
    .map((cookie) => cookie.split(';', 1)[0])
    .join('; ');
}

function load(url: string, cookie: string): Promise<autocannon.Result> {
  const headers = cookie === '' ? {} : { cookie };
  return autocannon({ url, headers, connections: CONNECTIONS, duration: SECONDS });
}

function loadRow(what: string, { requests, latency, non2xx }: autocannon.Result): string[] {
  return [what, requests.average.toFixed(0), ms(latency.p50), ms(latency.p99), String(requests.total), String(non2xx)];
}

/** One desk, one request after the other. */
function bookingRow(timings: readonly number[]): string[] {
  const perSecond = (1000 * timings.length) / timings.reduce((sum, each) => sum + each, 0);
  const [middle, slowest] = [percentile(timings, 0.5), percentile(timings, 0.99)];
  return [
    'booking: hold or confirm, 1 desk',
    perSecond.toFixed(0),
    ms(middle),
    ms(slowest),
    String(timings.length),
    '0',
  ];
}
