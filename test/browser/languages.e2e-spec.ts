import { jest } from '@jest/globals';
import { pathList, stageBoard } from '@archwright/contracts';
import type { Browser, Page } from 'playwright-core';
import { openBrowser, signIn, type DemoRole, type Person } from '../support/browser.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { bookCase, enterPatient } from '../support/prepared-cases.js';
import { faultsOfScreen } from '../support/screens.js';
import { callService } from '../support/service-call.js';

jest.setTimeout(240_000);

describe('the screens in other languages', () => {
  let service: DemoService;
  let browser: Browser;
  let person: Person;
  let caseId: string;
  let firstDay: string;
  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
    person = await signIn(browser, service.url, 'front-desk');
    const booked = await bookCase(person.page, await enterPatient(person.page, { givenName: 'Lingua' }));
    caseId = booked.id;
    firstDay = booked.stages.flatMap(({ startsAt }) => (startsAt === null ? [] : [startsAt.slice(0, 10)]))[0] ?? '';
    await person.leave();
  });
  afterAll(async () => {
    await browser.close();
    await service.stop();
  });
  afterEach(async () => {
    expect(person.complaints.take()).toEqual([]);
    await person.leave();
  });

  async function stageOfTheDay(page: Page): Promise<string> {
    const { cards } = await callService(page, `GET /stage-board?on=${firstDay}`, { answer: stageBoard });
    return `/chair/stages/${cards[0]?.stageId ?? ''}`;
  }

  async function conventionalEdit(page: Page): Promise<string> {
    const { items } = await callService(page, 'GET /treatment-paths', { answer: pathList });
    return `/practice/paths/${items.find(({ code }) => code === 'conventional')?.id ?? ''}/edit`;
  }

  const days: [DemoRole, (page: Page) => Promise<string[]>][] = [
    [
      'front-desk',
      () =>
        Promise.resolve([
          `/desk?on=${firstDay}`,
          '/desk/calls',
          '/desk/before-visits',
          '/desk/patients/new',
          `/desk/cases/${caseId}`,
          `/desk/cases/${caseId}/itinerary`,
        ]),
    ],
    ['lab', () => Promise.resolve([`/bench?on=${firstDay}`, '/bench/parcels'])],
    ['clinician', async (page) => [`/chair?on=${firstDay}`, await stageOfTheDay(page)]],
    [
      'manager',
      async (page) => [
        '/practice',
        '/practice/setup',
        '/practice/figures',
        '/practice/paths',
        await conventionalEdit(page),
      ],
    ],
  ];

  it.each(
    days.flatMap(([role, screens]) =>
      [['de', 'ltr'] as const, ['ar', 'rtl'] as const].map(([language, direction]) => ({
        role,
        screens,
        language,
        direction,
      })),
    ),
  )('let the $role do the day in $language', async ({ role, screens, language, direction }) => {
    person = await signIn(browser, service.url, role);
    const { page } = person;
    await page.getByRole('combobox', { name: 'Language' }).selectOption(language);
    await page.locator(`html[lang="${language}"][dir="${direction}"]`).waitFor();
    for (const screen of await screens(page)) {
      await page.goto(screen);
      await page.locator('h1').waitFor();
      expect(await page.getByRole('navigation').first().innerText()).not.toMatch(/Desk|Bench|Chair|Practice/);
      expect({ screen, faults: await faultsOfScreen(page) }).toEqual({ screen, faults: [] });
    }
  });

  it.each([
    ['de', 'Untersuchung, Einwilligung, Situationsabformungen', 'Vertikaldimension in Ruhe', /^1 Termin: 1 /],
    ['ar', 'الفحص والموافقة والطبعات الأولية', 'البعد العمودي عند الراحة', /^زيارة واحدة: \u2068?1 /],
  ])('say in %s what came with the product, and how the day stands', async (language, title, name, sentence) => {
    person = await signIn(browser, service.url, 'clinician');
    const { page } = person;
    const stage = await stageOfTheDay(page);
    await page.getByRole('combobox', { name: 'Language' }).selectOption(language);
    await page.locator(`html[lang="${language}"]`).waitFor();
    await page.goto(stage);
    await page.getByRole('heading', { level: 1, name: title }).waitFor();
    expect(await page.locator('main').innerText()).not.toContain('Medicines and allergies asked');
    await page.getByText(name).first().waitFor({ state: 'attached' });
    await page.goto(`/chair?on=${firstDay}`);
    await page.getByText(sentence).waitFor();
  });

  it('advise in German on what is typed', async () => {
    person = await signIn(browser, service.url, 'clinician');
    const { page } = person;
    const stage = await stageOfTheDay(page);
    await page.getByRole('combobox', { name: 'Language' }).selectOption('de');
    await page.locator('html[lang="de"]').waitFor();
    await page.goto(stage);
    await page.locator('summary').filter({ hasText: 'Höhen und Abstände beim Sprechen' }).first().click();
    for (const [reading, mm] of ['70', '78', '70'].entries()) {
      await page.getByLabel(`Vertikaldimension in Ruhe, ${String(reading + 1)}. Ablesung`).fill(mm);
    }
    await page.getByLabel('Vertikaldimension in Ruhe: Welche zwei Hautmarken?').selectOption('subnasale-gnathion');
    await page.getByText('Den Patienten entspannen und „m“ sagen lassen, dann erneut messen.').waitFor();
  });
});
