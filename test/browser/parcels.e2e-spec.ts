import { jest } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { openBrowser, signIn, type Person } from '../support/browser.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { bookCase, enterPatient } from '../support/prepared-cases.js';
import { faultsOfScreen } from '../support/screens.js';

jest.setTimeout(180_000);

/** One impression on its way from the desk to the bench, each test where the one before it left off. */
describe('a parcel', () => {
  let service: DemoService;
  let browser: Browser;
  let person: Person;
  let page: Page;
  let number: string;
  let code: string;

  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
    await at('front-desk');
    ({ number } = await bookCase(page, await enterPatient(page, { familyName: 'Parcel-Example' })));
    code = `${number}-impression-upper-1`;
  });
  afterEach(() => {
    expect(person.complaints.take()).toEqual([]);
  });
  afterAll(async () => {
    await browser.close();
    await service.stop();
  });

  async function at(role: 'front-desk' | 'lab'): Promise<void> {
    person = await signIn(browser, service.url, role);
    page = person.page;
    await page.getByRole('link', { name: 'Parcels' }).click();
    await page.getByRole('heading', { name: 'Parcels and things kept' }).waitFor();
  }
  const press = (name: string | RegExp) => page.getByRole('button', { name }).click();
  const part = (name: string) => page.locator('form, li').filter({ hasText: name });
  const thing = () =>
    page.getByRole('region', { name: 'Things kept here' }).getByRole('listitem').filter({ hasText: code });

  it('holds only what was registered and declared disinfected, with the word on what that is worth', async () => {
    const register = part('Keep something from now on');
    await register.getByLabel('Case number').fill('99-9999');
    await press('Register it');
    await page.getByText('No case of yours has this number.').waitFor();
    await register.getByLabel('Case number').fill(number);
    await register.getByLabel('Arch').selectOption('upper');
    await press('Register it');
    await page.getByText(`Write this code on it: ${code}`).waitFor();
    await thing().getByText('No disinfection of it is declared since it came here').waitFor();
    await thing().getByText(`What to do with ${code}`).click();
    await thing()
      .getByText(/A declaration is not a proof/)
      .waitFor();
    await press('Declare it disinfected');
    await thing().getByText('Name what it was disinfected with.').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await thing().getByLabel('Disinfected with').fill('surface agent');
    await thing().getByLabel('At', { exact: true }).fill('07:00');
    await press('Declare it disinfected');
    await thing()
      .getByText(/^Declared disinfected: surface agent, Mon 4 Jan, 07:00/)
      .waitFor();
  });

  it('is packed by both names of each thing, and leaves with somebody', async () => {
    const pack = part('Pack a parcel');
    const add = async (caseNumber: string) => {
      await pack.getByLabel('Case number').fill(caseNumber);
      await pack.getByLabel('Code of the object').fill(code);
      await page.keyboard.press('Enter');
    };
    person.complaints.expect(400, /\/parcels$/);
    await add('27-9999');
    await press('Pack it');
    await pack.getByText(/does not belong to case 27-9999. Accepted: both names off the same label/).waitFor();
    await press(`Leave out ${code}`);
    await add(number);
    await press('Pack it');
    await page.getByText('Packed.', { exact: true }).waitFor();
    await press('Hand over');
    await page.getByText('Say who takes it, in up to 80 characters.').waitFor();
    await page.getByLabel('Who takes it').fill('Noon run');
    await press('Hand over');
    await page.getByText('on its way', { exact: true }).waitFor();
    await person.leave();
  });

  it('is checked object by object where it arrives; what is amiss is quarantined until it is released', async () => {
    await at('lab');
    await press('It is here');
    await press('The parcel is checked');
    await page.getByText('Say how it was found.').last().waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByLabel(`Found: ${number} · ${code}`).selectOption('damaged');
    await page.getByLabel(`Note: ${number} · ${code}`).fill('Torn at the border');
    await press('The parcel is checked');
    await thing().getByText('It is quarantined: Damaged on arrival: Torn at the border').waitFor();
    await thing().getByText(`What to do with ${code}`).click();
    await thing().getByRole('button', { name: 'Release' }).click();
    await thing().getByLabel('Reason').fill('Usable, looked at');
    await thing()
      .getByRole('button', { name: /^Decide so/ })
      .click();
    await thing().getByText('in use', { exact: true }).waitFor();
    await person.leave();
  });
});
