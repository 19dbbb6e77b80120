import { jest } from '@jest/globals';
import { practiceView, type CaseView } from '@archwright/contracts';
import { createDataSource, inOrganisation, listOrganisations } from '@archwright/records';
import type { Browser, Page } from 'playwright-core';
import { Cast } from '../../apps/cli/src/demo/cast.js';
import { twoCasesForOneTime } from '../e2e/two-cases-for-one-time.js';
import { openBrowser, signIn, type DemoRole, type Person } from '../support/browser.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { faultsOfScreen } from '../support/screens.js';

jest.setTimeout(240_000);

const SEARCHED_WITHIN_MS = 90_000;

/** The bench can't keep up as visits are kept: it looks for better plans, and the desk decides where patients are to be called. */
describe('visits that a laboratory proposes to move', () => {
  let service: DemoService;
  let browser: Browser;
  let people: Person[];
  let firm: CaseView;
  let free: CaseView;

  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
    const cast = new Cast(service.url);
    await cast.signIn();
    const practice = await cast.desk.call({ method: 'GET', path: '/practice', answer: practiceView });
    const settings = { url: service.databaseUrl, applicationName: 'moves-suite', connections: 1 };
    const db = await createDataSource(settings).initialize();
    const [organisationId = ''] = await listOrganisations(db);
    const now = new Date(`${practice.today}T08:00:00Z`);
    ({ firm, free } = await twoCasesForOneTime(
      { desk: cast.desk, practice },
      (work) => inOrganisation(db, organisationId, work),
      now,
    ));
    await db.destroy();
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

  const arrive = async (role: DemoRole, path: string): Promise<Page> => {
    const person = await signIn(browser, service.url, role);
    people.push(person);
    await person.page.goto(path);
    await person.page.getByRole('heading', { level: 1 }).waitFor();
    return person.page;
  };

  it('is seen at the bench with what it would do, and who accepts it', async () => {
    const page = await arrive('lab', '/bench');
    await page.getByRole('button', { name: 'Look for better plans' }).click();
    const proposal = page.getByRole('article', { name: 'Choose free visits again' });
    await proposal.waitFor({ timeout: SEARCHED_WITHIN_MS });
    await proposal.getByText(/the front desk accepts this/).waitFor();
    await proposal.getByRole('link', { name: free.number }).first().waitFor();
    expect(await proposal.getByRole('button').count()).toBe(0);
    expect(await proposal.getByText('Booking-Example').count()).toBe(0);
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('is looked at by the manager, who moves nothing', async () => {
    const page = await arrive('manager', '/desk/proposed-moves');
    await page.getByText('The front desk accepts it and calls the patients.').waitFor();
    expect(await page.getByRole('button', { name: /^Accept/ }).count()).toBe(0);
  });

  it('is accepted at the desk with everybody who is to be called in sight', async () => {
    const page = await arrive('front-desk', '/desk');
    await page.getByRole('link', { name: 'Proposed moves' }).click();
    const proposal = page.getByRole('article');
    await proposal
      .getByText(/^\+44 20 7946 0012|Ida Booking-Example/)
      .first()
      .waitFor();
    await proposal.getByRole('heading', { name: free.number }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await proposal.getByRole('button', { name: /^Accept and move all of it/ }).click();
    await page.getByText('All of it has moved.').waitFor();
    await page.getByText(/^No laboratory proposes to move visits/).waitFor();
    await page.goto(`/desk/cases/${firm.id}`);
    await page.getByRole('heading', { level: 1 }).waitFor();
  });
});
