import { jest } from '@jest/globals';
import { labCaseView, materialLotView } from '@archwright/contracts';
import type { Browser, Page } from 'playwright-core';
import { found } from '../e2e/booking-practice.js';
import { openBrowser, signIn, type DemoRole, type Person } from '../support/browser.js';
import { comesTo } from '../support/comes-to.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { takePicture } from '../support/pictures.js';
import { faultsOfScreen } from '../support/screens.js';
import { callService } from '../support/service-call.js';
import { BenchDay } from './bench-day.js';

jest.setTimeout(240_000);

const QUESTION = 'The tuberosity is missing on the upper scan. Again, or without it?';
const ANSWER = 'Without it; the base is relieved there.';

/** One day of one case at the bench, each test where the one before it left off. */
describe('the bench', () => {
  let service: DemoService;
  let browser: Browser;
  let people: Person[];
  let number: string;
  let caseId: string;

  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
    const day = await BenchDay.prepare(service.url, { booked: 1, examined: 1 });
    ({ number, id: caseId } = found(day.cases[0]));
    await day.goToWorkOf(caseId);
  });
  afterAll(async () => {
    await browser.close();
    await service.stop();
  });
  beforeEach(() => {
    people = [];
  });
  afterEach(async () => {
    for (const person of people) {
      expect(person.complaints.take()).toEqual([]);
      await person.leave();
    }
  });

  const arrive = async (role: DemoRole, path?: string): Promise<Page> => {
    const person = await signIn(browser, service.url, role);
    people.push(person);
    if (path !== undefined) await person.page.goto(path);
    await person.page.getByRole('heading', { level: 1 }).waitFor();
    return person.page;
  };
  const act = (page: Page, action: string, step: string) =>
    page.getByRole('button', { name: `${action}: ${number}, ${step}` });
  const line = (page: Page, step: string) => page.getByRole('listitem').filter({ hasText: `${number} ${step}` });

  it('shows the load of every work centre in figures, and the work of the day in a stated order', async () => {
    const page = await arrive('lab');
    await page.getByRole('button', { name: /^Scanning, .*: 15 of 540 minutes/ }).click();
    await page.getByRole('heading', { name: /^Scanning, / }).waitFor();
    await page.getByText('Least slack first').waitFor();
    await line(page, 'Scan').getByText('to spare').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('starts and finishes a step, after which the next one may begin', async () => {
    const page = await arrive('lab');
    await line(page, 'Design').getByText('"Scan" to be finished').waitFor();
    await act(page, 'Start', 'Scan').click();
    await act(page, 'Pause', 'Scan').waitFor();
    await act(page, 'Finish', 'Scan').click();
    await page
      .getByRole('status')
      .filter({ hasText: `Finished: ${number}, Scan` })
      .waitFor();
    await act(page, 'Start', 'Design').waitFor();
  });

  it('asks the clinic, which stops the clock and says so', async () => {
    const page = await arrive('lab');
    await act(page, 'Ask the clinic', 'Design').click();
    await page.getByRole('button', { name: 'Send question' }).click();
    await page.getByText('Write it down, up to 500 characters.').waitFor();
    await page.getByLabel(/^Question to the clinic/).fill(QUESTION);
    await page.getByRole('button', { name: 'Send question' }).click();
    await line(page, 'Design').getByText('clock stopped').waitFor();
    await line(page, 'Design').getByText('stands still until the clinic answers').waitFor();
    await comesTo(act(page, 'Start', 'Design'), 0);
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('has its answer from the clinician, and goes on', async () => {
    const chair = await arrive('clinician');
    await chair.getByRole('heading', { name: 'The laboratory asks' }).waitFor();
    await chair.getByText(QUESTION).waitFor();
    await chair.getByRole('button', { name: 'Send the answer' }).click();
    await chair.getByText('Write an answer of up to 500 characters.').waitFor();
    expect(await faultsOfScreen(chair)).toEqual([]);
    await chair.getByLabel(/^Answer/).fill(ANSWER);
    await chair.getByRole('button', { name: 'Send the answer' }).click();
    await chair.getByRole('heading', { name: 'The laboratory asks' }).waitFor({ state: 'detached' });

    const page = await arrive('lab');
    await line(page, 'Design').getByText(ANSWER).waitFor();
    await act(page, 'Start', 'Design').waitFor();
  });

  it('shows a case by its number, with its orders and due times, and nobody’s identity', async () => {
    const page = await arrive('lab', `/desk/cases/${caseId}`);
    expect(new URL(page.url()).pathname).toBe(`/bench/cases/${caseId}`);
    await page.getByRole('heading', { name: 'Work orders' }).waitFor();
    await page.getByText(/^Signed by Dr /).waitFor();
    await page.getByText(ANSWER).waitFor();
    const shown = await page.locator('body').innerText();
    for (const part of ['Ida', 'Booking-Example', '1950', '7946']) expect(shown).not.toContain(part);
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('is found by its number, and by nothing else', async () => {
    const page = await arrive('lab');
    await page.keyboard.press('/');
    await page.keyboard.type('Booking-Example');
    await page.keyboard.press('Enter');
    await page.getByText('No case of this laboratory has a number that begins with').waitFor();
    await page.getByRole('searchbox', { name: 'Find a case number' }).fill(number);
    await page.getByRole('link', { name: number }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByRole('link', { name: number }).click();
    await page.getByRole('heading', { name: new RegExp(`^Case ${number} `) }).waitFor();
  });

  it('rejects work with its reason, and gives the bench back', async () => {
    const page = await arrive('lab');
    await act(page, 'Reject', 'Design').click();
    await page.getByLabel(/^What is wrong with the work/).fill('The scan is distorted.');
    await page.getByRole('button', { name: 'Reject the work' }).click();
    await page
      .getByRole('status')
      .filter({ hasText: `Rejected, and the clinic is told: ${number}` })
      .waitFor();
    await page.goto(`/bench/cases/${caseId}`);
    await page.getByText('Rejected: The scan is distorted.').waitFor();
  });

  it('leads from a lot of material to everyone who has it, for whoever has to call them', async () => {
    const bench = await arrive('lab');
    const { labSteps } = await callService(bench, `GET /cases/${caseId}`, { answer: labCaseView });
    const body = { material: 'Denture base resin', lot: 'R-204', expiresOn: null };
    const { id } = found(labSteps.find(({ state }) => state === 'finished'));
    await callService(bench, `POST /lab/steps/${id}/material-lots`, { answer: materialLotView, body });

    const page = await arrive('manager');
    await page.getByRole('link', { name: 'Find a lot of material' }).click();
    await page.getByRole('button', { name: 'Find', exact: true }).click();
    await page.getByText('Enter a lot of up to 60 characters.').waitFor();
    await page.getByLabel('Lot', { exact: true }).fill('r-204');
    await page.keyboard.press('Enter');
    await page.getByText('Lot “r-204” went into 1 case.').waitFor();
    await page
      .getByRole('row')
      .filter({ hasText: 'Ida Booking-Example' })
      .getByRole('link', { name: number })
      .waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByLabel('Lot', { exact: true }).fill('R-205');
    await page.keyboard.press('Enter');
    await page.getByText('No case has lot “R-205” on record.').waitFor();
  });

  it.each<DemoRole>(['manager', 'administrator'])(
    'is seen by the %s, who lands at the practice and acts on nothing',
    async (role) => {
      const page = await arrive(role);
      expect(new URL(page.url()).pathname).toBe('/practice');
      if (role === 'manager') expect(await faultsOfScreen(page)).toEqual([]);
      await page.getByRole('link', { name: 'Load and work of Lantern Example Laboratory' }).click();
      await page.getByRole('heading', { name: /load and work/ }).waitFor();
      expect(await page.getByRole('button', { name: /^(Start|Reject)/ }).count()).toBe(0);
      await page.getByRole('link', { name: 'Practice', exact: true }).click();
      await page.waitForURL('**/practice');
    },
  );

  it('keeps its people out of the other workplaces, and takes wrong addresses for the nearest right one', async () => {
    const page = await arrive('lab', '/desk/patients/new');
    await page.waitForURL('**/bench');
    await page.goto('/bench?on=2027-02-30&centre=none&lab=none');
    await page.getByRole('heading', { name: /^All work centres, / }).waitFor();
  });

  it('looks for better plans, shows what one would do, and moves the work once it is accepted', async () => {
    const day = await BenchDay.prepare(service.url, { booked: 1, examined: 1 });
    await day.goToWorkOf(found(day.cases[0]).id, 30);
    const page = await arrive('lab');
    await page.getByRole('button', { name: 'Look for better plans' }).click();
    await page.getByRole('button', { name: 'Cancel the search' }).click();
    await page.getByText('Nothing planned was changed.').waitFor();
    await page.getByRole('button', { name: 'Look again' }).click();
    const proposal = page.getByRole('article', { name: 'Move work within its slack' });
    await proposal.getByText('should have begun already').waitFor();
    await proposal.getByText(/steps? to move/).click();
    expect(await faultsOfScreen(page)).toEqual([]);
    await proposal.getByRole('button', { name: /^Accept and move the work/ }).click();
    await page.getByText('The work has moved. No visit has.').waitFor();
    await proposal.getByText('accepted', { exact: true }).waitFor();
  });

  if (process.env.TEST_PICTURES === '1') {
    it('is drawn with a busy fortnight for the README', async () => {
      const day = await BenchDay.prepare(service.url, { booked: 14, examined: 6 });
      await day.goToWorkOf(found(day.cases[0]).id, 30);
      const page = await arrive('lab');
      await page.setViewportSize({ width: 1280, height: 900 });
      await takePicture(page, 'bench');
    });
  }
});
