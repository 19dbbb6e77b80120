import { jest } from '@jest/globals';
import { appointmentView, caseView, practiceView, type AppointmentView } from '@archwright/contracts';
import type { Browser, Page } from 'playwright-core';
import { Cast } from '../../apps/cli/src/demo/cast.js';
import { bookedCase, found } from '../e2e/booking-practice.js';
import { openBrowser, signIn, type Person } from '../support/browser.js';
import { comesTo } from '../support/comes-to.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { faultsOfScreen } from '../support/screens.js';
import { callService } from '../support/service-call.js';

jest.setTimeout(240_000);

const SEARCHED_WITHIN_MS = 60_000;

/** A clinician is away on the day of a booked visit: the desk enters it, sees whom it falls on, and accepts a plan. */
describe('what falls away, at the desk', () => {
  let service: DemoService;
  let browser: Browser;
  let desk: Person;
  let page: Page;
  let visit: AppointmentView;

  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
    const cast = new Cast(service.url);
    await cast.signIn();
    const practice = await cast.desk.call({ method: 'GET', path: '/practice', answer: practiceView });
    const { stages } = await bookedCase({ desk: cast.desk, practice }, { clinics: 1 });
    const booked = stages.filter(({ appointmentId }) => appointmentId !== null);
    const path = `/appointments/${found(found(booked[1]).appointmentId)}`;
    visit = await cast.desk.call({ method: 'GET', path, answer: appointmentView });
    desk = await signIn(browser, service.url, 'front-desk');
    page = desk.page;
    await page.getByRole('link', { name: 'What falls away' }).click();
  });
  afterAll(async () => {
    await browser.close();
    await service.stop();
  });

  it('asks for what is missing before it looks for anybody', async () => {
    await page.getByRole('button', { name: 'Show who is affected' }).click();
    await page.getByText('Choose what falls away.').waitFor();
    await page.getByText('Say why in up to 500 characters.').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('shows whom it falls on, then plans with their cost, on a screen that everybody can use', async () => {
    const day = visit.startsAt.slice(0, 10);
    const names = await page.getByLabel(/^What/).locator('option').allTextContents();
    const label = found(names.find((name) => name.startsWith(visit.clinicianName)));
    await page.getByLabel(/^What/).selectOption({ label });
    await page.getByLabel('From', { exact: true }).fill(day);
    await page.getByLabel('Until', { exact: true }).fill(day);
    await page.getByLabel('Why').fill('A course');
    await page.getByRole('button', { name: 'Show who is affected' }).click();
    await page.getByText(/Nothing has moved yet\.$/).waitFor();
    await page.getByRole('link', { name: found(visit.caseNumber) }).waitFor();
    await page
      .getByRole('button', { name: /^Accept: / })
      .first()
      .waitFor({ timeout: SEARCHED_WITHIN_MS });
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('repairs everything in one go', async () => {
    await page
      .getByRole('button', { name: /^Accept: / })
      .first()
      .click();
    await page.getByRole('heading', { name: 'repaired' }).waitFor();
    await comesTo(page.getByRole('button', { name: /^Accept: / }), 0);
    await page.getByRole('link', { name: 'What falls away' }).first().click();
    await page.getByRole('heading', { name: 'Decided' }).waitFor();
    expect(desk.complaints.take()).toEqual([]);
  });

  it('begins with a visit as well: from when its patient can come again', async () => {
    await page.goto('/desk');
    const caseId = found(visit.caseId);
    const { stages } = await callService(page, `GET /cases/${caseId}`, { answer: caseView });
    const lost = found(stages.filter(({ appointmentState }) => appointmentState === 'booked').at(-1));
    await page.goto(`/desk/cases/${caseId}/visits/${found(lost.appointmentId)}`);
    await page.getByRole('link', { name: 'What falls away with it' }).click();
    await page.getByRole('heading', { level: 1, name: /^A visit falls away: / }).waitFor();
    await page.getByRole('button', { name: 'Show what it falls on' }).click();
    await page.getByText('Enter a day and time after the visit').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByLabel('Why').fill('A journey');
    await page.getByRole('button', { name: 'Show what it falls on' }).click();
    await page.getByText('Why: A journey').waitFor();
    await page.getByText(/^It falls on 1 case with 1 visit/).waitFor();
    await page.getByRole('button', { name: 'Withdraw the entry' }).click();
    await page.getByRole('heading', { name: 'withdrawn' }).waitFor();
    expect(desk.complaints.take()).toEqual([]);
  });
});
