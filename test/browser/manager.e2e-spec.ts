import { jest } from '@jest/globals';
import { practiceView } from '@archwright/contracts';
import type { Browser } from 'playwright-core';
import { Cast } from '../../apps/cli/src/demo/cast.js';
import { bookedCase } from '../e2e/booking-practice.js';
import { openBrowser, signIn, type Person } from '../support/browser.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { faultsOfScreen } from '../support/screens.js';

jest.setTimeout(240_000);

describe('the manager', () => {
  let service: DemoService;
  let browser: Browser;
  let person: Person;

  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
    const cast = new Cast(service.url);
    await cast.signIn();
    const practice = await cast.desk.call({ method: 'GET', path: '/practice', answer: practiceView });
    await bookedCase({ desk: cast.desk, practice }, { path: 'repair', clinics: 1 });
  });
  afterAll(async () => {
    await browser.close();
    await service.stop();
  });
  beforeEach(async () => {
    person = await signIn(browser, service.url, 'manager');
  });
  afterEach(async () => {
    expect(person.complaints.take()).toEqual([]);
    await person.leave();
  });

  it('changes hours, sees first which visits would be left without a place, and is told what a wrong rule lacks', async () => {
    const { page } = person;
    await page.getByRole('link', { name: 'Set-up' }).click();
    await page.getByRole('heading', { name: 'What the practice consists of' }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByRole('link', { name: 'North clinic', exact: true }).click();
    const days = page.getByRole('group', { name: 'Open: Time 1' });
    await page.getByText('Every week on Monday, Tuesday, Wednesday, Thursday and Friday, 08:30 to 17:30.').waitFor();
    await days.getByRole('button', { name: 'Write it as a rule' }).click();
    await days.getByLabel('Rule (RFC 5545)').fill('FREQ=SOMETIMES');
    await page.getByRole('button', { name: 'Show what it would do' }).click();
    await page.getByText('Accepted: DAILY, WEEKLY, MONTHLY, YEARLY.').first().waitFor();
    expect(await page.evaluate('document.activeElement.value')).toBe('FREQ=SOMETIMES');
    await days.getByLabel('Rule (RFC 5545)').fill('FREQ=MONTHLY;BYDAY=-1SA');
    await page.getByText('Every month on the last Saturday, 08:30 to 17:30.').waitFor();
    await page.getByRole('button', { name: 'Show what it would do' }).click();
    await page.getByText('North clinic is not open for all of it.').first().waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('adds a chair and takes it out of use', async () => {
    const { page } = person;
    await page.goto('/practice/setup/new?kind=chair');
    await page.getByLabel('Clinic').selectOption({ label: 'East clinic' });
    await page.getByRole('button', { name: 'Show what it would do' }).click();
    await page.getByText('Accepted: a name.').waitFor();
    await page.getByLabel('Name', { exact: true }).fill('Chair 7');
    await page.getByRole('button', { name: 'Show what it would do' }).click();
    await page.getByRole('button', { name: 'Add it' }).click();
    await page.getByRole('link', { name: 'Chair 7' }).click();
    await page.getByRole('button', { name: 'Take it out of use' }).click();
    await page.getByText(/None of \d+ booked times? to come is touched/).waitFor();
    await page.getByRole('button', { name: 'Yes, take it out of use' }).click();
    await page.getByRole('row', { name: /Chair 7 out of use/ }).waitFor();
  });
});
