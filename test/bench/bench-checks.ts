import { setTimeout as pause } from 'node:timers/promises';
import { caseView, practiceView, stageBoard, stageView } from '@archwright/contracts';
import { ApiSession } from '../../apps/cli/src/demo/api-session.js';
import { demoPassword } from '../../apps/cli/src/demo/scenario.js';
import { startService } from '../../apps/cli/src/start/service-process.js';
import { UndoList } from '../../apps/cli/src/start/undo-list.js';
import { book } from './bench-booking.js';
import { NOW, openBenchPractice } from './bench-practice.js';
import { startBenchApi } from './bench-service.js';
import { ms, percentile, table } from './figures.js';

const CAPTURES = 60;
const LOOK_EVERY_MS = 20;
/** Four people who keep the stage board open and press reload all the time: more than a practice of two clinics asks. */
const READERS = 4;
const FINDING = { code: 'newton-stomatitis', value: '0', arch: 'upper' };

/** From the answer to a saved capture until its check is there to be read: API and worker in processes of their own. */
export async function benchChecks(): Promise<string> {
  const undo = new UndoList();
  try {
    const { databaseUrl } = await openBenchPractice(undo);
    const url = await startBenchApi(databaseUrl, undo);
    const worker = await startService('worker', {
      DATABASE_URL: databaseUrl,
      SESSION_SECRET: 'a-secret-of-the-bench-long-enough-for-it',
      LOG_LEVEL: 'silent',
      // Both clocks run from their own start: with a minute to spare nothing waits until they agree.
      ARCHWRIGHT_CLOCK: new Date(NOW.getTime() + 60_000).toISOString(),
    });
    await undo.add(() => worker.stop());
    const [desk, chair] = [await signedIn(url, 'desk'), await signedIn(url, 'chair')];
    const practice = await desk.call({ method: 'GET', path: '/practice', answer: practiceView });
    const { id, day } = await book(desk, practice, []);
    const { stages } = await chair.call({ method: 'GET', path: `/cases/${id}`, answer: caseView });
    const stageId = stages[0]?.id ?? '';
    const alone = await waits(chair, stageId);
    const reading = new AbortController();
    const readers = Array.from({ length: READERS }, () => readBoard(chair, day, reading.signal));
    const besides = await waits(chair, stageId);
    reading.abort();
    await Promise.all(readers);
    return table(
      ['check after saving', 'p50, ms', 'p95, ms', 'slowest, ms', 'captures'],
      [row('nobody else at work', alone), row(`${String(READERS)} people read the board`, besides)],
    );
  } finally {
    await undo.undo();
  }
}

async function signedIn(url: string, name: string): Promise<ApiSession> {
  const session = new ApiSession(url);
  await session.signIn(`${name}@example.test`, demoPassword);
  return session;
}

async function readBoard(chair: ApiSession, day: string, signal: AbortSignal): Promise<void> {
  while (!signal.aborted) await chair.call({ method: 'GET', path: `/stage-board?on=${day}`, answer: stageBoard });
}

async function waits(chair: ApiSession, stageId: string): Promise<number[]> {
  const path = `/stages/${stageId}`;
  const view = () => chair.call({ method: 'GET', path, answer: stageView });
  const measured: number[] = [];
  for (let capture = 0; capture < CAPTURES; capture++) {
    const { version } = await view();
    const body = { readings: [FINDING] };
    await chair.call({ method: 'POST', path: `${path}/captures`, version, body, answer: stageView });
    const saved = performance.now();
    while ((await view()).checking) await pause(LOOK_EVERY_MS);
    measured.push(performance.now() - saved);
  }
  return measured;
}

const row = (what: string, samples: readonly number[]): string[] => [
  what,
  ms(percentile(samples, 0.5)),
  ms(percentile(samples, 0.95)),
  ms(Math.max(...samples)),
  String(samples.length),
];
