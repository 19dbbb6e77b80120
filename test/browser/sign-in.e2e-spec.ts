import { jest } from '@jest/globals';
import type { Browser } from 'playwright-core';
import { enterAs, openBrowser, openScreen, signIn, type DemoRole, type Person } from '../support/browser.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { faultsOfScreen } from '../support/screens.js';

jest.setTimeout(120_000);

describe('signing in', () => {
  let service: DemoService;
  let browser: Browser;
  let person: Person;
  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
  });
  afterAll(async () => {
    await browser.close();
    await service.stop();
  });
  afterEach(async () => {
    expect(person.complaints.take()).toEqual([]);
    await person.leave();
  });

  it.each<[DemoRole, string]>([
    ['front-desk', '/desk'],
    ['lab', '/bench'],
    ['clinician', '/chair'],
    ['manager', '/practice'],
    ['administrator', '/practice'],
  ])('brings the %s to %s, on a screen that everybody can use', async (role, path) => {
    person = await signIn(browser, service.url, role);
    await person.page.waitForURL(`**${path}`);
    await person.page.getByRole('heading', { level: 1 }).waitFor();
    expect(await faultsOfScreen(person.page)).toEqual([]);
  });

  it('says what does not fit, keeps the name, and lands where the person wanted to go', async () => {
    person = await openScreen(browser, service.url);
    person.complaints.expect(401, /\/sessions$/);
    await person.page.goto('/desk/calls');
    expect(await faultsOfScreen(person.page)).toEqual([]);
    await enterAs(person.page, 'front-desk', 'not-the-password');
    await person.page.getByText('Name and password do not fit together').waitFor();
    expect(await person.page.getByLabel('Sign-in name').inputValue()).toBe('desk@example.test');
    await enterAs(person.page, 'front-desk');
    await person.page.waitForURL('**/desk/calls');
  });
});
