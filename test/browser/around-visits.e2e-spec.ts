import { jest } from '@jest/globals';
import { caseView, practiceView, type CaseView } from '@archwright/contracts';
import type { Browser, Page } from 'playwright-core';
import { Cast } from '../../apps/cli/src/demo/cast.js';
import { Narrator } from '../../apps/cli/src/demo/narrator.js';
import { Treatment } from '../../apps/cli/src/demo/treatment.js';
import { bookedCase, found } from '../e2e/booking-practice.js';
import { openBrowser, signIn, type Person } from '../support/browser.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { Keys } from '../support/keys.js';
import { faultsOfScreen } from '../support/screens.js';
import { until } from '../support/until.js';

jest.setTimeout(240_000);

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const SWEPT_WITHIN_MS = 30_000;

/** A denture placed a while ago, a visit whose work has not come, a case that moves house: each test goes on from the last. */
describe('around the visits', () => {
  let service: DemoService;
  let browser: Browser;
  let cast: Cast;
  let desk: Person;
  let page: Page;
  let placed: CaseView;
  let behind: CaseView;
  let moving: CaseView;

  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
    cast = new Cast(service.url);
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

  it('the desk sees everything that waits, on a screen that everybody can use', async () => {
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

  it('the desk gives a reason for every decision, and a day to a check that is put off, each asked for at its field', async () => {
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

  it('the desk is told when somebody else has decided meanwhile', async () => {
    const colleague = await signIn(browser, service.url, 'front-desk');
    // Their tab lies in the background, which hears no news: the screen goes on showing what is over.
    await colleague.page.addInitScript("Object.defineProperty(document, 'visibilityState', { get: () => 'hidden' });");
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
    await leave(colleague);
    await page.getByText('Nothing waits for a decision before the visits.').waitFor();
    await leave(desk);
  });

  it('the clinician records a caution of the patient, and ends it with a reason', async () => {
    const clinician = await atChair('cautions');
    const { page: screen } = clinician;
    const press = (name: string | RegExp) => screen.getByRole('button', { name }).click();
    await screen.getByLabel('What it is').selectOption('Allergy to a material');
    await press('Record it');
    await screen.getByText('Choose the material.').waitFor();
    await screen.getByLabel('Material', { exact: true }).selectOption('nickel');
    await press('Record it');
    const line = screen.getByRole('listitem').filter({ hasText: 'allergic to nickel' });
    await line.getByText(/^Recorded by Dr Imogen Thorne-Example/).waitFor();
    clinician.complaints.expect(409, /\/cautions$/);
    await screen.getByLabel('What it is').selectOption('Allergy to a material');
    await screen.getByLabel('Material', { exact: true }).selectOption('nickel');
    await press('Record it');
    await screen.getByText(/on record; accepted: an allergy that is not/).waitFor();
    await press('It no longer holds');
    expect(await faultsOfScreen(screen)).toEqual([]);
    await line.getByLabel('Reason').fill('Tested: none');
    await press(/^Decide so/);
    await line.getByText(/^Ended .*: Tested: none$/).waitFor();
    await leave(clinician);
  });

  it('the clinician records by keyboard where it is sore, and what was relieved', async () => {
    const clinician = await atChair('aftercare');
    const { page: screen } = clinician;
    const lower = screen.getByRole('group', { name: 'Lower arch' });
    const keys = new Keys(screen);
    await keys.press(lower.getByRole('button', { name: 'lower ridge left' }));
    await keys.press(screen.getByRole('button', { name: 'Record the sore spot' }));
    await screen.getByText('Choose a number from 0 to 10.').waitFor();
    expect(await faultsOfScreen(screen)).toEqual([]);
    await screen.getByLabel('Pain, as the patient says').selectOption('4');
    await screen.getByLabel('Suspected cause').selectOption('border too long');
    await screen.getByRole('button', { name: 'Record the sore spot' }).click();
    await lower.getByRole('button', { name: 'lower ridge left, 1 open sore spot' }).waitFor();
    const spot = screen.getByRole('listitem').filter({ hasText: 'pain 4 of 10' });
    await spot.getByText('Record an adjustment for lower ridge left').click();
    await spot.getByLabel('Surface').selectOption('border');
    await spot.getByLabel('What was relieved or changed').fill('Border shortened beside the spot');
    await spot.getByRole('button', { name: 'Record it' }).click();
    await spot.getByText('Say it in up to 500 characters.').waitFor();
    await spot.getByLabel('How much').fill('A light stroke');
    await spot.getByRole('button', { name: 'Record it' }).click();
    await spot.getByText('Lower arch, border: Border shortened beside the spot (A light stroke)').waitFor();
    await leave(clinician);
  });

  it('the clinician decides on the referral of what has not healed in two weeks, and closes it once it has', async () => {
    await cast.moveClock(new Date(Date.parse(await cast.clockNow()) + 15 * DAY_MS).toISOString());
    const clinician = await atChair('aftercare');
    const { page: screen } = clinician;
    const spot = screen.getByRole('listitem').filter({ hasText: 'pain 4 of 10' });
    await until(async () => {
      await screen.reload();
      await screen.getByRole('heading', { name: 'Where it is sore' }).waitFor();
      return (await spot.getByText('Two weeks are over').count()) > 0;
    }, SWEPT_WITHIN_MS);
    await spot.getByRole('button', { name: 'Not referred' }).click();
    expect(await faultsOfScreen(screen)).toEqual([]);
    await spot.getByRole('button', { name: /^Decide so: Not referred/ }).click();
    await spot.getByText('Give a reason of up to 500 characters.').waitFor();
    await spot.getByLabel('Reason').fill('Seen by the hospital already');
    await spot.getByRole('button', { name: /^Decide so: Not referred/ }).click();
    await spot.getByText(/Seen by the hospital already$/).waitFor();
    await spot.getByRole('button', { name: 'It has healed' }).click();
    await spot.getByLabel('Healed on').fill((await cast.clockNow()).slice(0, 10));
    await spot.getByRole('button', { name: /^Decide so: It has healed/ }).click();
    await screen.getByRole('button', { name: 'lower ridge left, 1 healed' }).waitFor();
    await leave(clinician);
  });

  it('the desk opens a repair that follows the case that placed the denture, and both say so', async () => {
    const again = await signIn(browser, service.url, 'front-desk');
    const { page: screen } = again;
    await screen.goto(`/desk/cases/new?patient=${placed.patient.id}`);
    await screen.getByLabel('Follows the case').selectOption(placed.id);
    for (const arch of ['upper', 'lower'] as const) {
      const path = placed.arches.find((each) => each.arch === arch)?.pathVersionId ?? '';
      await screen.getByLabel(arch === 'upper' ? 'Upper arch' : 'Lower arch').selectOption(path);
    }
    expect(await faultsOfScreen(screen)).toEqual([]);
    await screen.getByRole('button', { name: 'Open and find times' }).click();
    await screen.waitForURL(/\/offers$/);
    await screen.goto(screen.url().replace(/\/offers$/, ''));
    await screen.getByRole('link', { name: `Follows case ${placed.number}` }).click();
    await screen.getByRole('link', { name: /^Followed by case / }).waitFor();
    expect(await faultsOfScreen(screen)).toEqual([]);
    await leave(again);
  });

  /** The clinician's own screen on something of the case whose denture was placed. */
  async function atChair(of: 'cautions' | 'aftercare'): Promise<Person> {
    const clinician = await signIn(browser, service.url, 'clinician');
    await clinician.page.goto(`/chair/cases/${placed.id}/${of}`);
    return clinician;
  }

  async function leave(person: Person): Promise<void> {
    expect(person.complaints.take()).toEqual([]);
    await person.leave();
  }

  /** The sweep of the background service raises what the clock's jump left behind. */
  async function raised(one: CaseView): Promise<void> {
    await until(async () => {
      await page.reload();
      await page.getByRole('heading', { name: 'Checks to book' }).waitFor();
      // A list that is on its way is not counted as empty.
      await page.waitForLoadState('networkidle');
      return (await entry(one).count()) > 0;
    }, SWEPT_WITHIN_MS);
  }
});
