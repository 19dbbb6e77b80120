import type { Browser, BrowserContext, Page } from 'playwright-core';
import { demoPassword, scenario } from '../../apps/cli/src/demo/scenario.js';
import type { DemoRole } from '../support/browser.js';

/** Times as slow as this machine's processor. */
const SLOW_DOWN = 4;
/** An event that took less is not told by the browser; it counts as this long. */
const SHORTEST_EVENT_MS = 16;

export interface Screen {
  readonly name: string;
  readonly path: string;
  /** Null for whoever has not signed in. */
  readonly role: DemoRole | null;
  /** What people do there most. */
  readonly use: (page: Page) => Promise<void>;
}

/** One load with an empty cache, and one use of the screen after it. */
export interface LoadFigures {
  readonly scriptBytes: number;
  /** Largest contentful paint. */
  readonly lcpMs: number;
  /** Slowest interaction, from the key or button to the next frame. */
  readonly inpMs: number;
  /** Cumulative layout shift: the sum of all, which is never less than that of the worst second. */
  readonly shift: number;
}

export type SignedIn = Awaited<ReturnType<BrowserContext['storageState']>>;

/** Cookies of one of the demonstration's people, so that a load measures the screen and not the sign-in. */
export async function stateOf(browser: Browser, url: string, role: DemoRole): Promise<SignedIn> {
  const context = await browser.newContext({ baseURL: url });
  const signInName = scenario.users.find((user) => user.role === role)?.signInName;
  const answer = await context.request.post('/api/v1/sessions', { data: { signInName, password: demoPassword } });
  if (!answer.ok()) throw new Error(`Nobody signs in as ${role}: ${await answer.text()}`);
  const state = await context.storageState();
  await context.close();
  return state;
}

const WATCH = `
  globalThis.seen = { lcp: 0, inp: ${String(SHORTEST_EVENT_MS)}, shift: 0, longest: 0 };
  const watch = (type, options, note) =>
    new PerformanceObserver((list) => list.getEntries().forEach(note)).observe({ type, buffered: true, ...options });
  watch('largest-contentful-paint', {}, (entry) => { seen.lcp = entry.startTime; });
  watch('layout-shift', {}, (entry) => { if (!entry.hadRecentInput) seen.shift += entry.value; });
  watch('event', { durationThreshold: ${String(SHORTEST_EVENT_MS)} }, (entry) => {
    if (entry.interactionId) seen.inp = Math.max(seen.inp, entry.duration);
  });
  watch('longtask', {}, (entry) => { seen.longest = Math.max(seen.longest, entry.duration); });`;

/** A page of its own on the slowed processor, where what the browser measures is noted from the start. */
export async function openSlowPage(browser: Browser, url: string, state?: SignedIn): Promise<Page> {
  const context = await browser.newContext({
    baseURL: url,
    viewport: { width: 1280, height: 800 },
    locale: 'en-GB',
    timezoneId: scenario.organisation.zone,
    ...(state === undefined ? {} : { storageState: state }),
  });
  const page = await context.newPage();
  await page.addInitScript(WATCH);
  const control = await context.newCDPSession(page);
  await control.send('Emulation.setCPUThrottlingRate', { rate: SLOW_DOWN });
  return page;
}

export async function loadScreen(
  browser: Browser,
  url: string,
  screen: Screen,
  state?: SignedIn,
): Promise<LoadFigures> {
  const page = await openSlowPage(browser, url, state);
  try {
    await page.goto(screen.path);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.waitForLoadState('networkidle');
    // The first interaction ends the watch for the largest paint, so it is read before.
    const lcpMs = await page.evaluate<number>('seen.lcp');
    const scriptBytes = await page.evaluate<number>(
      `performance.getEntriesByType('resource').filter(({ name }) => name.endsWith('.js'))
        .reduce((sum, { encodedBodySize }) => sum + encodedBodySize, 0)`,
    );
    await screen.use(page);
    await page.waitForTimeout(300);
    const { inp, shift } = await page.evaluate<{ inp: number; shift: number }>('seen');
    return { scriptBytes, lcpMs, inpMs: inp, shift };
  } finally {
    await page.context().close();
  }
}
