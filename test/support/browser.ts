import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { demoPassword, scenario } from '../../apps/cli/src/demo/scenario.js';
import { Complaints } from './complaints.js';

export type DemoRole = (typeof scenario.users)[number]['role'];

const WIDE = { width: 1280, height: 800 };
/** How long a person would wait before something seems broken; generous, since tests share few cores. */
const PATIENCE_MS = 15_000;

/** A person at a screen of their own: other people's cookies and colours don't show here. */
export interface Person {
  readonly page: Page;
  /** Whatever the browser or the service found wrong, to be empty at the end of every test. */
  readonly complaints: Complaints;
  leave(): Promise<void>;
}

/** The Chromium that the test command found. */
export async function openBrowser(): Promise<Browser> {
  const executablePath = process.env.TEST_CHROMIUM;
  if (executablePath === undefined) throw new Error('TEST_CHROMIUM is not set. Run this suite by "npm run test:web".');
  // Chromium's own sandbox refuses to run as root, as in a container; the pages are our own.
  return chromium.launch({ executablePath, args: process.getuid?.() === 0 ? ['--no-sandbox'] : [] });
}

/** Somebody who has not signed in yet. */
export async function openScreen(browser: Browser, url: string): Promise<Person> {
  const context: BrowserContext = await browser.newContext({
    baseURL: url,
    viewport: WIDE,
    locale: 'en-GB',
    timezoneId: scenario.organisation.zone,
    reducedMotion: 'reduce',
  });
  context.setDefaultTimeout(PATIENCE_MS);
  const page = await context.newPage();
  return { page, complaints: await Complaints.of(page), leave: () => context.close() };
}

/** One of the demonstration's people, signed in through the screen and standing at the first page of their day. */
export async function signIn(browser: Browser, url: string, role: DemoRole): Promise<Person> {
  const person = await openScreen(browser, url);
  await person.page.goto('/');
  await enterAs(person.page, role);
  return person;
}

/** Fills in the sign-in form that is on the screen. */
export async function enterAs(page: Page, role: DemoRole, password: string = demoPassword): Promise<void> {
  const user = scenario.users.find((each) => each.role === role);
  if (user === undefined) throw new Error(`The demonstration has nobody in the role "${role}".`);
  await page.getByLabel('Sign-in name').fill(user.signInName);
  await page.getByLabel('Password', { exact: true }).fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  if (password !== demoPassword) return;
  await page.getByRole('button', { name: 'Sign out' }).waitFor();
}
