import { practiceView, type CaseView } from '@archwright/contracts';
import { chromium, type Browser } from 'playwright-core';
import { UsageError } from '../../apps/cli/src/arguments.js';
import { ApiSession } from '../../apps/cli/src/demo/api-session.js';
import { demoPassword } from '../../apps/cli/src/demo/scenario.js';
import { UndoList } from '../../apps/cli/src/start/undo-list.js';
import { findChromium } from '../../apps/cli/src/test/find-chromium.js';
import { bookedCase, found } from '../e2e/booking-practice.js';
import { openBenchPractice } from './bench-practice.js';
import { startBenchApi } from './bench-service.js';
import { ms, percentile, table } from './figures.js';
import { scrollLongDay } from './web-long-day.js';
import { loadScreen, stateOf, type LoadFigures, type Screen } from './web-screen.js';

const USAGE = 'npm run bench:web [-- --loads N]';
const LOADS = 30;
const CASES = 12;

/** How quickly each screen stands and answers in a browser on a processor slowed down four times. */
export async function benchWeb(args: readonly string[]): Promise<string> {
  const loads = loadsOf(args);
  const executablePath = await findChromium();
  if (executablePath === undefined) throw new Error('There is no Chromium; name one with CHROMIUM_PATH.');
  const undo = new UndoList();
  try {
    const { databaseUrl } = await openBenchPractice(undo);
    const url = await startBenchApi(databaseUrl, undo);
    const browser = await chromium.launch({ executablePath, args: process.getuid?.() === 0 ? ['--no-sandbox'] : [] });
    await undo.add(() => browser.close());
    const day = await bookDay(url);
    const rows: string[][] = [];
    for (const screen of screensOf(day)) rows.push(rowOf(screen, await loadOften(browser, url, screen, loads)));
    const longest = await scrollLongDay(browser, url, day.on);
    return `${table(
      ['screen', 'script, kB compressed', 'LCP p75, ms', 'INP p75, ms', 'CLS p75', 'loads'],
      rows,
    )}\n\nScrolling a day of 500 visits: longest task ${ms(longest)} ms.`;
  } finally {
    await undo.undo();
  }
}

function loadsOf(args: readonly string[]): number {
  if (args.length === 0) return LOADS;
  const [option, text = ''] = args;
  if (option !== '--loads' || args.length > 2 || !/^[1-9]\d{0,2}$/.test(text))
    throw new UsageError(`"${args.join(' ')}" is not understood; give --loads with a number from 1 to 999.`, USAGE);
  return Number(text);
}

interface BookedDay {
  readonly on: string;
  readonly caseId: string;
  readonly stageId: string;
}

/** The day on which most of a dozen booked cases have their first visit. */
async function bookDay(url: string): Promise<BookedDay> {
  const desk = new ApiSession(url);
  await desk.signIn('desk@example.test', demoPassword);
  const practice = await desk.call({ method: 'GET', path: '/practice', answer: practiceView });
  const cases: CaseView[] = [];
  for (let index = 0; index < CASES; index++)
    cases.push(await bookedCase({ desk, practice }, { path: 'conventional' }));
  const on = mostFrequent(cases.map(firstDay));
  const { id, stages } = found(cases.find((each) => firstDay(each) === on));
  return { on, caseId: id, stageId: found(stages[0]).id };
}

const firstDay = ({ stages }: CaseView): string => found(stages[0]?.startsAt).slice(0, 10);

function mostFrequent(days: readonly string[]): string {
  const count = (day: string): number => days.filter((each) => each === day).length;
  return days.reduce((most, day) => (count(day) > count(most) ? day : most));
}

function screensOf({ on, stageId, caseId }: BookedDay): Screen[] {
  return [
    { name: 'sign-in', path: '/sign-in', role: null, use: (page) => page.getByLabel('Sign-in name').press('d') },
    {
      name: "desk's day",
      path: `/desk?on=${on}`,
      role: 'front-desk',
      use: (page) => page.getByRole('button', { name: 'Later' }).click(),
    },
    { name: 'find', path: '/find', role: 'front-desk', use: (page) => page.getByRole('searchbox').first().press('e') },
    {
      name: 'new patient',
      path: '/desk/patients/new',
      role: 'front-desk',
      use: (page) => page.locator('main').getByRole('textbox').first().press('e'),
    },
    {
      name: 'case',
      path: `/desk/cases/${caseId}`,
      role: 'front-desk',
      use: (page) => page.locator('main summary').first().click(),
    },
    {
      name: "chair's day",
      path: `/chair?on=${on}`,
      role: 'clinician',
      use: (page) => page.getByRole('button', { name: 'Later' }).click(),
    },
    {
      name: 'visit at the chair',
      path: `/chair/stages/${stageId}`,
      role: 'clinician',
      use: (page) => page.locator('main input:enabled').first().click(),
    },
    {
      name: "bench's day",
      path: '/bench',
      role: 'lab',
      // The second day: the first is shown already, so that pressing it changes nothing on the screen, and what the browser
      // counts until the next frame is how long nothing else happens.
      use: (page) => page.locator('main table button').nth(1).click(),
    },
    { name: 'practice', path: '/practice', role: 'manager', use: (page) => page.keyboard.press('Tab') },
  ];
}

async function loadOften(browser: Browser, url: string, screen: Screen, loads: number): Promise<LoadFigures[]> {
  const state = screen.role === null ? undefined : await stateOf(browser, url, screen.role);
  const figures: LoadFigures[] = [];
  for (let load = 0; load < loads; load++) figures.push(await loadScreen(browser, url, screen, state));
  return figures;
}

function rowOf({ name }: Screen, figures: readonly LoadFigures[]): string[] {
  const at75 = (pick: (each: LoadFigures) => number): number => percentile(figures.map(pick), 0.75);
  return [
    name,
    at75(({ scriptBytes }) => scriptBytes / 1000).toFixed(0),
    ms(at75(({ lcpMs }) => lcpMs)),
    ms(at75(({ inpMs }) => inpMs)),
    at75(({ shift }) => shift).toFixed(3),
    String(figures.length),
  ];
}
