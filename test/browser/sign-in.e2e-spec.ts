import { jest } from '@jest/globals';
import type { Browser } from 'playwright-core';
import { demoPassword } from '../../apps/cli/src/demo/scenario.js';
import { found } from '../e2e/booking-practice.js';
import { enterAs, openBrowser, openScreen, signIn, type DemoRole, type Person } from '../support/browser.js';
import { comesTo } from '../support/comes-to.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { Hand } from '../support/hand.js';
import { faultsOfScreen } from '../support/screens.js';

jest.setTimeout(120_000);

/** Of somebody who has never seen the program, the signing in included. */
const MOST_FIRST_ACTIONS = 12;

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

  it('tells the browser of whoever is signed in what the screen asks first, and nobody else', async () => {
    person = await signIn(browser, service.url, 'front-desk');
    const { request } = person.page;
    const linksOf = async (path: string): Promise<string | undefined> => (await request.get(path)).headers()['link'];
    expect(await linksOf('/chair')).toContain('</api/v1/practice>; rel=preload; as=fetch');
    expect(await linksOf('/chair')).not.toContain('/stages');
    const id = '019b0000-0000-7000-8000-000000000001';
    expect(await linksOf(`/chair/stages/${id}?on=2027-01-04`)).toContain(
      `</api/v1/stages/${id}>; rel=preload; as=fetch`,
    );
    expect(await linksOf(`/desk/cases/${id}`)).toContain(`</api/v1/cases/${id}>; rel=preload; as=fetch`);
    for (const path of ['/desk/cases/new', `/desk/cases/${id}/offers`])
      expect(await linksOf(path)).not.toContain('/api/v1/cases');
    await person.page.context().clearCookies();
    expect(await linksOf('/chair')).toBeUndefined();
  });

  it('goes on where a person wanted to go whose session had ended before the page was opened', async () => {
    person = await signIn(browser, service.url, 'front-desk');
    const { page } = person;
    // What the first screen asks for is answered to the session that there is.
    await page.waitForLoadState('networkidle');
    const [cookie] = await page.context().cookies();
    await page.context().addCookies([{ ...found(cookie), value: `${found(cookie).value}x` }]);
    person.complaints.expect(401, /\/sessions/);
    await page.goto('/desk/calls');
    await enterAs(page, 'front-desk');
    await page.waitForURL('**/desk/calls');
    await page.getByRole('heading', { name: 'Calls to make' }).waitFor();
  });

  it('leads a newcomer at the front desk, by what the first task says, to a whole booked chain in twelve actions', async () => {
    person = await openScreen(browser, service.url);
    person.complaints.expect(401, /\/sessions/);
    const { page } = person;
    await page.goto('/');
    const hand = new Hand(page);
    const told = (words: RegExp) => page.getByText(words).waitFor();
    await hand.type(page.getByLabel('Sign-in name'), 'desk@example.test');
    await hand.type(page.getByLabel('Password', { exact: true }), demoPassword);
    await hand.click(page.getByRole('button', { name: 'Sign in' }));
    await told(/Press \/ and type alma, then Enter/);
    await hand.press('/');
    await hand.type(page.getByRole('searchbox'), 'alma');
    await hand.press('Enter');
    await told(/Choose “Open a case” beside her name/);
    await hand.click(page.getByRole('link', { name: 'Open a case for Alma Example' }));
    await told(/Choose a path for the upper arch/);
    await hand.choose(page.getByLabel('Upper arch'), /conventional/);
    await hand.click(page.getByRole('button', { name: 'Open and find times' }));
    await told(/hold one while she is on the phone/);
    await hand.click(page.getByRole('button', { name: 'Hold while on the phone' }).first());
    await hand.click(page.getByRole('button', { name: 'Confirm all visits' }));
    await told(/Every visit and the laboratory work between them are booked/);
    await comesTo(page.getByRole('link', { name: /^Move or cancel: / }), 7);
    expect(hand.actions).toBeLessThanOrEqual(MOST_FIRST_ACTIONS);
  });
});
