import { jest } from '@jest/globals';
import { createDataSource, listOrganisations } from '@archwright/records';
import type { Browser, Page } from 'playwright-core';
import type { DataSource } from 'typeorm';
import { found } from '../e2e/booking-practice.js';
import { PASSWORD, writeAccount } from '../e2e/cases-client.js';
import { writePartner } from '../e2e/partner-laboratory.js';
import { openBrowser, openScreen, signIn, type DemoRole, type Person } from '../support/browser.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { faultsOfScreen } from '../support/screens.js';
import { BenchDay } from './bench-day.js';

jest.setTimeout(240_000);

/** Work ordered from a laboratory that is an organisation of its own, seen from both sides. */
describe('orders to another laboratory', () => {
  let service: DemoService;
  let browser: Browser;
  let db: DataSource;
  let people: Person[];
  let day: BenchDay;
  let partnerSignIn: string;

  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
    db = await createDataSource({
      url: service.databaseUrl,
      applicationName: 'suite',
      connections: 2,
    }).initialize();
    const [practiceId = ''] = await listOrganisations(db);
    const partner = await writePartner(db, practiceId);
    const work = { role: 'lab', laboratoryIds: [partner.laboratoryId] } as const;
    partnerSignIn = await writeAccount(db, partner.organisationId, work);
    day = await BenchDay.prepare(service.url, { booked: 2, examined: 2 });
  });
  afterAll(async () => {
    await db.destroy();
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

  const arrive = async (role: DemoRole, path: string): Promise<Page> => {
    const person = await signIn(browser, service.url, role);
    people.push(person);
    await person.page.goto(path);
    await person.page.getByRole('heading', { level: 1 }).waitFor();
    return person.page;
  };
  const atPartner = async (): Promise<Page> => {
    const person = await openScreen(browser, service.url);
    people.push(person);
    await person.page.goto('/bench/orders');
    await person.page.getByLabel('Sign-in name').fill(partnerSignIn);
    await person.page.getByLabel('Password', { exact: true }).fill(PASSWORD);
    await person.page.getByRole('button', { name: 'Sign in' }).click();
    await person.page.getByRole('heading', { level: 1, name: 'Orders from practices' }).waitFor();
    return person.page;
  };
  const numberOf = (index: number) => found(day.cases[index]).number;
  const choose = async (page: Page, index: number, choice: string): Promise<void> => {
    await page
      .getByRole('group', { name: `Decide: order ${numberOf(index)}` })
      .getByRole('button', { name: choice, exact: true })
      .click();
  };
  const save = (page: Page, index: number, choice: string) =>
    page.getByRole('button', { name: `Decide so: ${choice}, order ${numberOf(index)}` }).click();

  it('say that there are none yet, on either side', async () => {
    await (await arrive('front-desk', '/desk/lab-orders')).getByText('No order has been sent.').waitFor();
    await (await atPartner()).getByText('No practice has ordered work here yet.').waitFor();
  });

  it('are sent by the clinician who signed the work, and stand before the practice, the answer still open', async () => {
    for (const { stages } of day.cases) {
      const chair = await arrive('clinician', `/chair/stages/${found(stages[0]).id}`);
      await chair.getByText('Choose a laboratory').click();
      await chair.getByLabel('Needed back at').fill('09:00');
      await chair.getByRole('button', { name: 'Send the order' }).click();
      await chair.getByText('Choose the laboratory that makes it.').waitFor();
      await chair.getByText('Enter a day and a time, or leave both empty.').waitFor();
      expect(await faultsOfScreen(chair)).toEqual([]);
      await chair.getByLabel('Needed back at').fill('');
      await chair.getByLabel('Laboratory', { exact: true }).selectOption('Benchwork Example');
      await chair.getByRole('button', { name: 'Send the order' }).click();
      await chair.getByText(/^Ordered from Benchwork Example, needed .*: waits for an answer\./).waitFor();
      expect(await chair.getByText('Choose a laboratory').count()).toBe(0);
    }
    const page = await arrive('front-desk', '/desk');
    await page.getByRole('link', { name: 'Orders to other laboratories' }).click();
    await page.getByText('2 orders are under way.').waitFor();
    await page.getByText('to Benchwork Example').first().waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('are accepted with a day, and declined with a reason, by a laboratory that learns nobody’s name', async () => {
    const page = await atPartner();
    await choose(page, 0, 'Accept for another day');
    await save(page, 0, 'Accept for another day');
    await page.getByText('Choose a day that is still to come.').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByLabel(/^Back in the clinic on/).fill('2027-06-01');
    await save(page, 0, 'Accept for another day');
    await page.getByRole('status').filter({ hasText: 'Noted: Accept for another day' }).waitFor();
    await choose(page, 1, 'Decline');
    await save(page, 1, 'Decline');
    await page.getByText('Give a reason of up to 500 characters.').waitFor();
    await page.getByLabel('Reason').fill('No wax bench free');
    await save(page, 1, 'Decline');
    await page.getByText('Declined: No wax bench free').waitFor();
    const shown = await page.locator('body').innerText();
    for (const part of ['Ida', 'Booking-Example', '1950', '7946']) expect(shown).not.toContain(part);
  });

  it('come back to the practice with their answer, what is late first, and can be taken back', async () => {
    const page = await arrive('front-desk', '/desk/lab-orders');
    await page.getByText('1 order is under way, 1 needs a person.').waitFor();
    await page.getByText('promised later than needed').waitFor();
    await page.getByText('Declined: No wax bench free').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await choose(page, 0, 'Withdraw');
    await page.getByLabel('Reason').fill('Too late for the visit.');
    await save(page, 0, 'Withdraw');
    await page.getByRole('status').filter({ hasText: 'Noted: Withdraw' }).waitFor();
    await page.getByText('No order is under way.').waitFor();

    await (await atPartner()).getByText('withdrawn', { exact: true }).waitFor();
  });
});
