import { jest } from '@jest/globals';
import { patientView } from '@archwright/contracts';
import type { Browser } from 'playwright-core';
import { openBrowser, signIn, type Person } from '../support/browser.js';
import { comesTo } from '../support/comes-to.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { enterPatient, openCase } from '../support/prepared-cases.js';
import { faultsOfScreen } from '../support/screens.js';
import { callService } from '../support/service-call.js';

jest.setTimeout(120_000);

let service: DemoService;
let browser: Browser;
let desk: Person;
let chair: Person;
let manager: Person;
beforeAll(async () => {
  [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
  desk = await signIn(browser, service.url, 'front-desk');
  chair = await signIn(browser, service.url, 'clinician');
  manager = await signIn(browser, service.url, 'manager');
});
afterEach(() => {
  for (const { complaints } of [desk, chair, manager]) expect(complaints.take()).toEqual([]);
});
afterAll(async () => {
  await browser.close();
  await service.stop();
});

describe('two people at one patient', () => {
  it('see what the other saves, and neither loses what they type', async () => {
    const id = await enterPatient(desk.page, { givenName: 'Tandem', familyName: 'Twofold', phone: '+44 20 7946 0001' });
    await desk.page.goto(`/desk/patients/${id}`);
    await desk.page.getByRole('textbox', { name: 'Telephone' }).fill('+44 20 7946 0002');

    await manager.page.goto(`/desk/patients/${id}`);
    await manager.page.getByLabel('Mail address').fill('tandem@example.test');
    await manager.page.getByRole('button', { name: 'Save' }).click();
    await manager.page.getByText('Saved.').waitFor();

    // Beside what is being typed, what was saved elsewhere appears without anybody asking for it.
    await desk.page.getByText('Taken over from it: Mail address.').waitFor();
    expect(await desk.page.getByLabel('Mail address').inputValue()).toBe('tandem@example.test');
    expect(await desk.page.getByRole('textbox', { name: 'Telephone' }).inputValue()).toBe('+44 20 7946 0002');
    await desk.page.reload();
    expect(await desk.page.getByRole('textbox', { name: 'Telephone' }).inputValue()).toBe('+44 20 7946 0002');

    await manager.page.getByRole('textbox', { name: 'Telephone' }).fill('+44 20 7946 0003');
    await manager.page.getByRole('button', { name: 'Save' }).click();
    const clash = desk.page.getByRole('row', { name: /^Telephone/ });
    await clash.waitFor();
    expect(await clash.getByRole('cell').allInnerTexts()).toEqual(['+44 20 7946 0002', '+44 20 7946 0003']);
    expect(await faultsOfScreen(desk.page)).toEqual([]);
    await desk.page.getByRole('button', { name: 'Keep what I typed' }).click();
    await desk.page.getByRole('button', { name: 'Save' }).click();
    await desk.page.getByText('Saved.').waitFor();
    const saved = await callService(desk.page, `GET /patients/${id}`, { answer: patientView });
    expect(saved).toMatchObject({ phone: '+44 20 7946 0002', mail: 'tandem@example.test' });
  });
});

describe('two people at one case', () => {
  it('are told what the other did, while they look at it', async () => {
    const patientId = await enterPatient(desk.page, { givenName: 'Coming', familyName: 'Together' });
    const { id } = await openCase(desk.page, patientId);
    await desk.page.goto(`/desk/cases/${id}`);
    await desk.page.getByRole('heading', { name: 'Agreed and asked' }).waitFor();
    await chair.page.goto(`/desk/cases/${id}`);
    await chair.page.getByLabel('Consent on').fill('2027-01-04');
    await chair.page.getByRole('button', { name: 'Save dates' }).click();
    await desk.page.getByText('Changed by someone else just now').waitFor();
    expect(await faultsOfScreen(desk.page)).toEqual([]);
    await desk.page.getByRole('button', { name: 'Seen' }).click();
    await comesTo(desk.page.getByText('Changed by someone else just now'), 0);
  });
});

describe('without a network', () => {
  it('says so, keeps what is typed, and catches up by itself', async () => {
    const { page } = desk;
    const id = await enterPatient(page, { givenName: 'Off', familyName: 'Line' });
    await page.goto(`/desk/patients/${id}`);
    await page.getByRole('textbox', { name: 'Telephone' }).fill('+44 20 7946 0009');
    await page.context().setOffline(true);
    await page.getByText('No connection.').waitFor();
    const before = await callService(manager.page, `GET /patients/${id}`, { answer: patientView });
    await manager.page.goto(`/desk/patients/${id}`);
    await manager.page.getByLabel('Address', { exact: true }).fill('1 Example Row');
    await manager.page.getByRole('button', { name: 'Save' }).click();
    await manager.page.getByText('Saved.').waitFor();
    expect(before.address).toBeNull();
    await page.context().setOffline(false);
    await page.getByText('Taken over from it: Address.').waitFor();
    expect(await page.getByRole('textbox', { name: 'Telephone' }).inputValue()).toBe('+44 20 7946 0009');
    // The browser notes the lost line by itself.
    expect(desk.complaints.take().filter((line) => !line.includes('ERR_INTERNET_DISCONNECTED'))).toEqual([]);
  });
});
