import { jest } from '@jest/globals';
import type { Browser } from 'playwright-core';
import { Cast } from '../../apps/cli/src/demo/cast.js';
import type { Treatment } from '../../apps/cli/src/demo/treatment.js';
import { found } from '../e2e/booking-practice.js';
import { openBrowser, signIn, type Person } from '../support/browser.js';
import { comesTo } from '../support/comes-to.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { faultsOfScreen } from '../support/screens.js';
import { until } from '../support/until.js';
import { COMBINED_VISIT, bookedTreatment } from './booked-treatment.js';
import { platePhotograph } from './plate-photograph.js';

jest.setTimeout(240_000);

/** Arms that rise by one in two to each side of (0, 0). */
const DRAWN = [2, 4, 6].flatMap((x) => [
  { phase: 'right' as const, x, y: x / 2 },
  { phase: 'left' as const, x: -x, y: x / 2 },
]);

describe('what is kept of a case', () => {
  let service: DemoService;
  let browser: Browser;
  let traced: Treatment;
  let person: Person;

  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
    const cast = new Cast(service.url);
    await cast.signIn();
    traced = await bookedTreatment(cast);
    await traced.consent();
    await traced.completeStage('D1');
    await traced.makeLabWork('D1');
    const worn = { stylusOn: 'lower', view: 'as-worn', posture: 'upright' } as const;
    const tracing = { ...worn, basesMoved: false, contact: false, pain: false, points: DRAWN };
    await traced.capture(await traced.begin(COMBINED_VISIT), { tracings: [tracing, tracing] });
  });
  afterAll(async () => {
    await browser.close();
    await service.stop();
  });
  afterEach(async () => {
    expect(person.complaints.take()).toEqual([]);
    await person.leave();
  });

  it('keeps a photograph with the visit, upright and without what the camera noted', async () => {
    const { id } = found((await traced.state()).stages.find(({ code }) => code === COMBINED_VISIT));
    person = await signIn(browser, service.url, 'clinician');
    const { page } = person;
    await page.goto(`/chair/stages/${id}`);
    await page
      .locator('summary')
      .filter({ hasText: /^Photographs$/ })
      .click();
    await page.getByRole('button', { name: 'Keep it with the visit' }).click();
    await page.getByText('Choose a photograph.').waitFor();
    await until(async () => (await page.evaluate('document.activeElement.type')) === 'file');
    await page.getByLabel('Photograph', { exact: true }).setInputFiles({
      name: 'notes.txt',
      mimeType: 'image/png',
      buffer: Buffer.from('no picture'),
    });
    await page.getByLabel('What it shows').fill('Plate after the second attempt');
    await page.getByRole('button', { name: 'Keep it with the visit' }).click();
    await page.getByText('This file cannot be read as a picture.').first().waitFor();
    await page.getByLabel('Photograph', { exact: true }).setInputFiles(await platePhotograph());
    await page.getByRole('button', { name: 'Keep it with the visit' }).click();
    const shown = page.getByRole('img', { name: 'Photograph: Plate after the second attempt' });
    await shown.waitFor();
    await shown.scrollIntoViewIfNeeded();
    const shownWidth = 'document.querySelector(\'img[alt^="Photograph: "]\').naturalWidth';
    await until(async () => (await page.evaluate<number>(shownWidth)) > 0);
    await until(async () => (await page.getByLabel('What it shows').inputValue()) === '');
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('shows the course of a case: plan and what happened, measurements over the visits, tracings, photographs', async () => {
    person = await signIn(browser, service.url, 'clinician');
    const { page } = person;
    const view = await traced.state();
    await page.goto(`/desk/cases/${view.id}`);
    await page.getByRole('link', { name: 'The course of the case' }).click();
    await page.getByRole('heading', { name: `${view.number} · The course of ${view.patient.name}` }).waitFor();
    const happened = page.getByRole('group', { name: 'First plan and what happened' });
    await comesTo(happened.getByRole('row'), 1 + view.stages.length + view.labSteps.length);
    await page.getByRole('group', { name: 'Measurements over the visits' }).waitFor();
    await page.getByRole('img', { name: 'Drawing: recorded 1' }).waitFor();
    await page.getByRole('img', { name: 'Photograph: Plate after the second attempt' }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });
});
