import type { Browser, Page } from 'playwright-core';
import { openBrowser, signIn, type DemoRole, type Person } from './browser.js';
import { startDemoService, type DemoService } from './demo-service.js';

/** Somebody's day on a demonstration practice of the suite's own; what it holds is there while a test runs. */
export interface Day {
  /** Of the person, who is signed in anew for each test. */
  readonly page: Page;
  readonly complaints: Person['complaints'];
}

/**
 * Sets a suite up as the day of one person: the practice runs for all its tests, and after each of them neither the
 * browser nor the service may have found anything wrong.
 *
 * @param prepare what happened in the practice before the day begins
 */
export function dayOf(role: DemoRole, prepare: (service: DemoService) => Promise<void> = () => Promise.resolve()): Day {
  let service: DemoService;
  let browser: Browser;
  let person: Person;
  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
    await prepare(service);
  });
  afterAll(async () => {
    await browser.close();
    await service.stop();
  });
  beforeEach(async () => {
    person = await signIn(browser, service.url, role);
  });
  afterEach(async () => {
    expect(person.complaints.take()).toEqual([]);
    await person.leave();
  });
  return {
    get page() {
      return person.page;
    },
    get complaints() {
      return person.complaints;
    },
  };
}
