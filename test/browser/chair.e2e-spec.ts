import { jest } from '@jest/globals';
import { practiceView } from '@archwright/contracts';
import type { Browser, Page } from 'playwright-core';
import { Cast } from '../../apps/cli/src/demo/cast.js';
import { Narrator } from '../../apps/cli/src/demo/narrator.js';
import { completeChecklist, requiredReadings } from '../../apps/cli/src/demo/readings.js';
import { Treatment } from '../../apps/cli/src/demo/treatment.js';
import { bookedCase, found } from '../e2e/booking-practice.js';
import { openBrowser, signIn, type Person } from '../support/browser.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { faultsOfScreen } from '../support/screens.js';

jest.setTimeout(240_000);

const COMBINED_VISIT = 'D2';
const REST = 'Vertical dimension at rest';
const OCCLUSAL = 'Occlusal vertical dimension';
const OCCLUSAL_BOX = `${OCCLUSAL}, 1. reading, in mm`;

describe("the clinician's day", () => {
  let service: DemoService;
  let browser: Browser;
  let cast: Cast;
  let smooth: Treatment;
  let troubled: Treatment;
  let person: Person;

  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
    cast = new Cast(service.url);
    await cast.signIn();
    smooth = await bookedTreatment();
    troubled = await bookedTreatment();
    for (const treatment of [smooth, troubled]) {
      await treatment.consent();
      await treatment.completeStage('D1');
    }
    for (const treatment of [smooth, troubled]) await treatment.makeLabWork('D1');
  });
  afterAll(async () => {
    await browser.close();
    await service.stop();
  });
  afterEach(async () => {
    expect(person.complaints.take()).toEqual([]);
    await person.leave();
  });

  /** A digital case with the clinician whose screen this is. */
  async function bookedTreatment(): Promise<Treatment> {
    const practice = await cast.desk.call({ method: 'GET', path: '/practice', answer: practiceView });
    const clinicians = practice.clinics.flatMap((clinic) => clinic.clinicians);
    const { id: clinicianId } = found(clinicians.find(({ name }) => name === 'Dr Imogen Thorne-Example'));
    const booked = await bookedCase({ desk: cast.desk, practice }, { path: 'digital-printed-bases', clinicianId });
    return new Treatment(cast, booked.id, new Narrator(() => undefined));
  }

  /** The clinician at the board of the day, the patient of that case in the waiting room. */
  async function atBoard(treatment: Treatment): Promise<Page> {
    const { stages, number } = await treatment.state();
    const visit = found(stages.find(({ code }) => code === COMBINED_VISIT));
    await cast.moveClock(found(visit.startsAt));
    person = await signIn(browser, service.url, 'clinician');
    await person.page.waitForURL('**/chair');
    await person.page.getByText(number).first().waitFor();
    return person.page;
  }

  async function atVisit(treatment: Treatment): Promise<Page> {
    const page = await atBoard(treatment);
    const { number } = await treatment.state();
    const card = page.getByRole('listitem').filter({ hasText: number });
    await card.getByRole('link').click();
    await page.getByRole('button', { name: 'Start the visit' }).click();
    await page.getByText('visit under way').waitFor();
    return page;
  }

  /** Three readings between the same two marks. */
  async function measure(page: Page, what: string, mm: string): Promise<void> {
    for (const n of ['1', '2', '3']) await page.getByLabel(`${what}, ${n}. reading, in mm`).fill(mm);
    await page.getByLabel(`${what}: Which two skin marks?`).selectOption('subnasale-gnathion');
  }

  const saved = (page: Page) => page.getByText('Nothing new to save.').waitFor();
  const checks = (page: Page) => page.getByRole('region', { name: 'What the checks say' });

  it('shows the day by what may go on, on a screen that everybody can use', async () => {
    const page = await atBoard(smooth);
    await page.getByText('Ready to begin. Here: Printed base plate with rim.').first().waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('says while it is typed that no rest distance is left, keeps it over a reload, and passes once it is corrected', async () => {
    const page = await atVisit(smooth);
    await measure(page, REST, '68');
    await measure(page, OCCLUSAL, '68');
    await checks(page).getByText('As typed, not saved yet.').waitFor();
    await checks(page).getByText('Interocclusal rest distance 0 mm').waitFor();
    await page.reload();
    expect(await page.getByLabel(OCCLUSAL_BOX).inputValue()).toBe('68');

    await page.getByRole('button', { name: 'Save and check' }).click();
    await saved(page);
    await checks(page).getByText('correct now').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);

    await page.getByLabel(OCCLUSAL_BOX).fill('650');
    await page.getByRole('button', { name: 'Save and check' }).click();
    await page.getByText('Enter a number from 38 to 98 mm.').waitFor();
    await measure(page, OCCLUSAL, '65');
    await page.getByRole('button', { name: 'Save and check' }).click();
    await saved(page);
    await checks(page).getByText('no rest distance is left').waitFor({ state: 'hidden' });
    expect(await checks(page).getByText('Interocclusal rest distance: 3 mm').count()).toBe(1);
  });

  it('hands the work over with a signature and finishes the visit', async () => {
    const { id } = found((await smooth.state()).stages.find(({ code }) => code === COMBINED_VISIT));
    const view = await smooth.view(id);
    await smooth.capture(view, {
      readings: requiredReadings(view),
      checklist: completeChecklist(view),
      otherCentricRelation: [{ method: 'bimanual-guidance' }],
    });
    person = await signIn(browser, service.url, 'clinician');
    const { page } = person;
    await page.goto(`/chair/stages/${id}`);
    await page.getByText('Fill in and sign').click();
    await page.getByLabel('Disinfected with').fill('surface agent, full contact time');
    const [, time] = /T(\d\d:\d\d)/.exec(await cast.clockNow()) ?? [];
    await page.getByLabel('Disinfected at').last().fill(found(time));
    await page.getByRole('button', { name: 'Sign the prescription' }).click();
    await page.getByText(/The prescription was signed .* by Dr Imogen Thorne-Example/).waitFor();
    await page.getByRole('button', { name: 'Finish', exact: true }).click();
    await page.getByRole('button', { name: 'Finish the visit' }).click();
    await page.getByText('visit finished').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    expect((await smooth.view(id)).state).toBe('passed');
  });

  it('raises an alert for three failed tracings, and moves nothing until its plan is accepted', async () => {
    const page = await atVisit(troubled);
    await page.getByText('Needle-point tracings and other records').click();
    for (const attempt of [0, 1, 2]) {
      await page.getByRole('button', { name: 'Add a tracing' }).click();
      await page.getByLabel('Apex', { exact: true }).nth(attempt).selectOption('none');
    }
    await checks(page).getByText('3 failed in this visit').waitFor();
    await page.getByRole('button', { name: 'Save and check' }).click();
    await page.getByRole('link', { name: 'Look at the alert' }).click();
    const before = await troubled.state();
    const accept = page.getByRole('button', { name: /^Accept/ }).first();
    await accept.waitFor({ timeout: 60_000 });
    expect(await faultsOfScreen(page)).toEqual([]);
    expect((await troubled.state()).version).toBe(before.version);

    await accept.click();
    await page.getByText('A way was accepted.').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    const goes = (await troubled.state()).stages.filter(({ code }) => code === COMBINED_VISIT);
    expect(goes.map(({ round, state }) => [round, state])).toEqual([
      [1, 'repeated'],
      [2, 'planned'],
    ]);
  });
});
