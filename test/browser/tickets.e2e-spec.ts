import { jest } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { found } from '../e2e/booking-practice.js';
import { enterAs, openBrowser, openScreen, signIn, type Person } from '../support/browser.js';
import { comesTo } from '../support/comes-to.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { readQr } from '../support/read-qr.js';
import { faultsOfScreen } from '../support/screens.js';
import { BenchDay } from './bench-day.js';

jest.setTimeout(240_000);

/** What a camera reads off a ticket on the screen: of every module, whether the drawing covers its middle. */
async function scan(page: Page, name: string): Promise<string> {
  await page.getByRole('img', { name }).waitFor();
  const modules = await page.evaluate<boolean[][]>(`(() => {
    const drawn = document.querySelector(${JSON.stringify(`svg[aria-label="${name}"] path`)});
    const middles = Array.from({ length: Number(drawn.dataset.size) }, (_, index) => index + 0.5);
    return middles.map((y) => middles.map((x) => drawn.isPointInFill(new DOMPoint(x, y))));
  })()`);
  return readQr(modules);
}

/** Jobs of one case on paper, the way back from the paper to the job, and what the bench says of it there. */
describe('job tickets', () => {
  let service: DemoService;
  let browser: Browser;
  let people: Person[];
  let number: string;
  let caseId: string;
  let address: string;

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

  const arrive = async (role: 'lab' | 'manager'): Promise<Page> => {
    const person = await signIn(browser, service.url, role);
    people.push(person);
    await person.page.getByRole('heading', { level: 1 }).waitFor();
    return person.page;
  };

  it('are printed for the work of a day, one A6 sheet each, with nobody’s name', async () => {
    const page = await arrive('lab');
    await page.getByRole('link', { name: 'Job tickets', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'Job tickets' }).waitFor();
    const scanned = page.getByRole('article', { name: `${number}, Scan, both arches` });
    await scanned.getByText('Due back').waitFor();
    address = await scan(page, `Code that opens ${number}, Scan, both arches`);
    expect(address).toMatch(/^http:\/\/[^/]+\/bench\/jobs\/[0-9a-f-]{36}$/);
    await page.getByText('which only this computer can open').waitFor();
    const shown = await page.locator('body').innerText();
    for (const part of ['Ida', 'Booking-Example', '1950', '7946']) expect(shown).not.toContain(part);
    expect(await faultsOfScreen(page)).toEqual([]);

    const tickets = await page.getByRole('article').count();
    expect(await pagesOnPaper(page)).toBe(tickets);
    await page.getByRole('checkbox', { name: `Print: ${number}, Scan, both arches` }).uncheck();
    expect(await pagesOnPaper(page)).toBe(tickets - 1);
    await page.getByRole('button', { name: 'Choose all' }).click();
    expect(await pagesOnPaper(page)).toBe(tickets);
  });

  it('are printed for one case and for one job', async () => {
    const page = await arrive('lab');
    await page.goto(`/bench/cases/${caseId}`);
    await page.getByRole('link', { name: 'Job tickets' }).click();
    await page.getByRole('checkbox', { name: `Print: ${number}, Finish and polish, both arches` }).waitFor();
    await page.goto('/bench');
    await page.getByRole('link', { name: `Job ticket: ${number}, Scan, both arches` }).click();
    expect(await scan(page, `Code that opens ${number}, Scan, both arches`)).toBe(address);
    await comesTo(page.getByRole('article'), 1);
  });

  it('lead whoever scans them to the job, past the sign-in', async () => {
    const person = await openScreen(browser, service.url);
    people.push(person);
    const { page } = person;
    await page.goto(address);
    await enterAs(page, 'lab');
    await page.getByRole('heading', { level: 1, name: `${number} · Scan, both arches` }).waitFor();
    expect(page.url()).toBe(address);
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByRole('button', { name: `Start: ${number}, Scan, both arches` }).click();
    await page.getByRole('button', { name: `Finish: ${number}, Scan, both arches` }).click();
    await page
      .getByRole('status')
      .filter({ hasText: `Finished: ${number}, Scan` })
      .waitFor();
  });

  it('let who does the job note which lot of material it used', async () => {
    const page = await arrive('lab');
    await page.goto(address);
    await page.getByText('No lot is on record for this job yet.').waitFor();
    await page.getByText('Note a lot').click();
    await page.getByRole('button', { name: 'Note it' }).click();
    await page.getByText('Enter the material in up to 120 characters.').waitFor();
    await page.getByText('Enter a lot of up to 60 characters.').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    people[0]?.complaints.expect(409, /\/material-lots$/);
    await page.getByLabel('Material, as on the container').fill('Denture base resin');
    await page.getByLabel('Lot number').fill('R-204');
    await page.reload();
    await page.getByText('Note a lot').click();
    expect(await page.getByLabel('Material, as on the container').inputValue()).toBe('Denture base resin');
    await page.getByLabel(/^Use by/).fill('2020-01-31');
    await page.getByRole('button', { name: 'Note it' }).click();
    await page.getByText('a lot that is good until').waitFor();
    await page.getByLabel(/^Use by/).fill('2030-01-31');
    await page.getByRole('button', { name: 'Note it' }).click();
    await page.getByText('Noted: Denture base resin, lot R-204.').waitFor();
    await page.getByRole('row', { name: /Denture base resin.* R-204/ }).waitFor();
    await page.goto(`/bench/cases/${caseId}`);
    await page.getByRole('row', { name: /Denture base resin.* R-204/ }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('let the bench say that work will be late, which the front desk then has to decide', async () => {
    const page = await arrive('lab');
    await page.getByRole('button', { name: /^Will be late: .*, Print base plates, both arches$/ }).click();
    await page.getByRole('button', { name: 'Tell the clinic' }).click();
    await page.getByText('Enter a day and time after the planned end').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByLabel('Ready on').fill('2027-01-12');
    await page.getByLabel('Why').fill('The printer is down.');
    await page.getByRole('button', { name: 'Tell the clinic' }).click();
    await page.getByRole('status').filter({ hasText: 'The clinic is told; ' }).waitFor();
    await page.getByText(/Said to be ready Tue 12 Jan, /).waitFor();
    await comesTo(page.getByRole('button', { name: /^Will be late: .*, Print base plates/ }), 0);

    const desk = await signIn(browser, service.url, 'front-desk');
    people.push(desk);
    await desk.page.goto('/desk/falls-away');
    await desk.page.getByRole('link', { name: new RegExp(`^${number} `) }).click();
    await desk.page.getByText('Why: The printer is down.').waitFor();
    await desk.page.getByText(/^It falls on 1 case/).waitFor();
  });

  it('say so when their job is not planned any more', async () => {
    const page = await arrive('lab');
    await page.goto('/bench/jobs/01890a5d-ac96-774b-bcce-b302099a8057');
    await page.getByText('This job is not planned at your laboratory any more').waitFor();
    people[0]?.complaints.take();
    await page.getByRole('link', { name: 'Find the case' }).click();
    await page.getByRole('heading', { name: 'Find a case' }).waitFor();
  });
});

/** Sheets that a printer would be sent, of the size that the page asks for. */
async function pagesOnPaper(page: Page): Promise<number> {
  const paper = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  const boxes = [...paper.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)];
  for (const [, width, height] of boxes) {
    // A6 in points of 1/72 inch.
    expect(Math.round(Number(width))).toBe(298);
    expect(Math.round(Number(height))).toBe(420);
  }
  return boxes.length;
}
