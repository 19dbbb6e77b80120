import { jest } from '@jest/globals';
import { caseView, practiceView, type CaseView } from '@archwright/contracts';
import type { Browser, Page } from 'playwright-core';
import { Cast } from '../../apps/cli/src/demo/cast.js';
import { Narrator } from '../../apps/cli/src/demo/narrator.js';
import { Treatment } from '../../apps/cli/src/demo/treatment.js';
import { bookedCase, found } from '../e2e/booking-practice.js';
import { openBrowser, signIn, type Person } from '../support/browser.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { faultsOfScreen } from '../support/screens.js';

jest.setTimeout(240_000);

const HOUR_MS = 3_600_000;
const SWEPT_WITHIN_MS = 30_000;

/** One morning at the desk: a denture placed a while ago, a visit whose work has not come, a case that moves house. */
describe('before the visits', () => {
  let service: DemoService;
  let browser: Browser;
  let desk: Person;
  let page: Page;
  let placed: CaseView;
  let behind: CaseView;
  let moving: CaseView;

  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
    const cast = new Cast(service.url);
    await cast.signIn();
    const practice = await cast.desk.call({ method: 'GET', path: '/practice', answer: practiceView });
    const book = (path: string, clinics?: number) =>
      bookedCase({ desk: cast.desk, practice }, { path, ...(clinics ? { clinics } : {}) });
    placed = await book('repair', 1);
    const repair = new Treatment(cast, placed.id, new Narrator(() => undefined));
    await repair.consent();
    await repair.completeStage('P1');
    await repair.makeLabWork('P1');
    // The run that brings the repair arrives as the visit begins.
    await cast.moveClock(found((await repair.state()).stages.find(({ code }) => code === 'P2')?.startsAt));
    await repair.completeStage('P2');
    [behind, moving] = [await book('conventional'), await book('conventional', 1)];
    const body = { to: 'transferred', reason: 'Moves house', clinicId: found(practice.clinics[1]).id };
    const path = `/cases/${moving.id}/state`;
    await cast.desk.call({ method: 'PUT', path, version: moving.version, body, answer: caseView });
    const waiting = behind.stages.find(({ code }) => behind.labSteps.some(({ beforeStage }) => beforeStage === code));
    const visitAt = Date.parse(found(waiting?.startsAt));
    await cast.moveClock(new Date(visitAt - 5 * HOUR_MS).toISOString());
    desk = await signIn(browser, service.url, 'front-desk');
    page = desk.page;
    await page.getByRole('link', { name: 'Before the visits' }).click();
  });
  afterEach(() => {
    expect(desk.complaints.take()).toEqual([]);
  });
  afterAll(async () => {
    await browser.close();
    await service.stop();
  });

  const entry = ({ number }: CaseView) => page.getByRole('listitem').filter({ hasText: number });
  const press = (one: CaseView, name: string) => entry(one).getByRole('button', { name, exact: true }).click();
  const decide = (one: CaseView) =>
    entry(one)
      .getByRole('button', { name: /^Decide so/ })
      .click();

  it('shows everything that waits, on a screen that everybody can use', async () => {
    await raised(behind);
    expect(await page.getByText(/whose work has not come/).innerText()).toBe(
      '1 visit whose work has not come, 1 check to book and 1 case on the way to another clinic.',
    );
    await entry(behind)
      .getByText(/^Not there: /)
      .waitFor();
    await press(behind, 'Wait for it');
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('wants a reason for every decision, at its field, and a day for a check that is put off', async () => {
    await decide(behind);
    await entry(behind).getByText('Give a reason of up to 500 characters.').waitFor();
    await press(placed, 'Put off');
    await decide(placed);
    await entry(placed).getByText('Choose a day from today on.').waitFor();
    desk.complaints.expect(400, /\/recalls\/.*\/decision$/);
    await entry(placed).getByLabel('Due on').fill('2027-01-01');
    await entry(placed).getByLabel('Reason').fill('On a journey');
    await decide(placed);
    await entry(placed)
      .getByText(/Accepted: a date from 2027/)
      .waitFor();
    await entry(placed).getByLabel('Due on').fill('2027-09-01');
    await decide(placed);
    await entry(placed).waitFor({ state: 'detached' });
  });

  it('says what became of a visit that somebody else decided on meanwhile', async () => {
    const colleague = await signIn(browser, service.url, 'front-desk');
    await colleague.page.goto('/desk/before-visits');
    await colleague.page.getByText(moving.number).waitFor();
    await entry(behind).getByLabel('Reason').fill('Promised for the evening');
    await decide(behind);
    await entry(behind).waitFor({ state: 'detached' });
    await press(moving, 'Decline');
    await entry(moving).getByLabel('Reason').fill('No chair free');
    await decide(moving);
    await entry(moving).waitFor({ state: 'detached' });
    const theirs = colleague.page.getByRole('listitem').filter({ hasText: moving.number });
    colleague.complaints.expect(412, /\/transfers\/.*\/decision$/);
    colleague.complaints.expect(409, /\/transfers\/.*\/decision$/);
    await theirs.getByRole('button', { name: 'Take it over' }).click();
    await theirs.getByLabel('Reason').fill('Agreed');
    await theirs.getByRole('button', { name: /^Decide so/ }).click();
    await colleague.page.getByText(/Someone else saved a change meanwhile/).waitFor();
    expect(colleague.complaints.take()).toEqual([]);
    await colleague.leave();
    await page.getByText('Nothing waits for a decision before the visits.').waitFor();
  });

  /** The sweep of the background service raises what the clock's jump left behind. */
  async function raised(one: CaseView): Promise<void> {
    const deadline = Date.now() + SWEPT_WITHIN_MS;
    while ((await entry(one).count()) === 0) {
      if (Date.now() > deadline) throw new Error('The sweep raised no check.');
      await page.reload();
      await page.getByRole('heading', { name: 'Checks to book' }).waitFor();
      // A list that is on its way is not counted as empty.
      await page.waitForLoadState('networkidle');
    }
  }
});
