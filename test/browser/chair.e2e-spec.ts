import { jest } from '@jest/globals';
import type { Browser, Locator, Page, Route } from 'playwright-core';
import { Cast } from '../../apps/cli/src/demo/cast.js';
import { completeChecklist, requiredReadings } from '../../apps/cli/src/demo/readings.js';
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

const REST = 'Vertical dimension at rest';
const OCCLUSAL = 'Occlusal vertical dimension';
const OCCLUSAL_BOX = `${OCCLUSAL}, 1. reading, in mm`;

describe("the clinician's day", () => {
  let service: DemoService;
  let browser: Browser;
  let cast: Cast;
  let smooth: Treatment;
  let traced: Treatment;
  let troubled: Treatment;
  let person: Person;

  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
    cast = new Cast(service.url);
    await cast.signIn();
    smooth = await bookedTreatment(cast);
    traced = await bookedTreatment(cast);
    troubled = await bookedTreatment(cast);
    for (const treatment of [smooth, traced, troubled]) {
      await treatment.consent();
      await treatment.completeStage('D1');
    }
    for (const treatment of [smooth, traced, troubled]) await treatment.makeLabWork('D1');
  });
  afterAll(async () => {
    await browser.close();
    await service.stop();
  });
  afterEach(async () => {
    expect(person.complaints.take()).toEqual([]);
    await person.leave();
  });

  /** The clinician at the board of the day, the patient of that case in the waiting room. */
  async function atBoard(treatment: Treatment): Promise<Page> {
    const { stages, number } = await treatment.state();
    const visit = found(stages.find(({ code }) => code === COMBINED_VISIT));
    await cast.moveClock(found(visit.startsAt));
    person = await signIn(browser, service.url, 'clinician');
    await person.page.waitForURL('**/chair');
    await person.page.getByText(number).first().waitFor();
    return person.page;
  }

  async function atVisit(treatment: Treatment): Promise<Page> {
    const page = await atBoard(treatment);
    const { number } = await treatment.state();
    const card = page.getByRole('listitem').filter({ hasText: number });
    await card.getByRole('link').click();
    await page.getByRole('button', { name: 'Start the visit' }).click();
    await page.getByText('visit under way').waitFor();
    return page;
  }

  /** Three readings between the same two marks. */
  async function measure(page: Page, what: string, mm: string): Promise<void> {
    for (const n of ['1', '2', '3']) await page.getByLabel(`${what}, ${n}. reading, in mm`).fill(mm);
    await page.getByLabel(`${what}: Which two skin marks?`).selectOption('subnasale-gnathion');
  }

  /** A new attempt whose stylus is on the lower jaw, so that its arms lead forward, which is up. */
  async function beginDrawing(page: Page): Promise<Locator> {
    await page.getByRole('button', { name: 'Draw a tracing' }).click();
    await page.getByLabel('Stylus on').last().selectOption('lower');
    return page.getByRole('application', { name: 'Plate of attempt 1' });
  }

  /** Drawn with the button held, from one place of the plate to another; the pad shows 12 mm to each side. */
  async function stroke(page: Page, pad: Locator, from: [number, number], to: [number, number]): Promise<void> {
    await pad.scrollIntoViewIfNeeded();
    const box = found(await pad.boundingBox());
    const at = ([x, y]: [number, number]): [number, number] => [
      box.x + ((x + 12) / 24) * box.width,
      box.y + ((12 - y) / 24) * box.height,
    ];
    await page.mouse.move(...at(from));
    await page.mouse.down();
    await page.mouse.move(...at(to), { steps: 30 });
    await page.mouse.up();
  }

  const saved = (page: Page) => page.getByText('Nothing new to save.').waitFor();
  const checks = (page: Page) => page.getByRole('region', { name: 'What the checks say' });

  it('shows the day by what may go on, on a screen that everybody can use', async () => {
    const page = await atBoard(smooth);
    await page.getByText('Ready to begin. Here: Printed base plate with rim.').first().waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('says while it is typed that no rest distance is left, keeps it over a reload, and passes once it is corrected', async () => {
    const page = await atVisit(smooth);
    await measure(page, REST, '68');
    await measure(page, OCCLUSAL, '68');
    await checks(page).getByText('As typed, not saved yet.').waitFor();
    await checks(page).getByText('Interocclusal rest distance 0 mm').waitFor();
    await page.reload();
    expect(await page.getByLabel(OCCLUSAL_BOX).inputValue()).toBe('68');
    const device = page.getByLabel('Lengths taken with');
    await device.selectOption({ index: 1 });
    const chosen = await device.inputValue();

    await page.getByRole('button', { name: 'Save and check' }).click();
    await saved(page);
    // Nothing is typed any more: this is what the chair remembers.
    expect([chosen === '', await device.inputValue()]).toEqual([false, chosen]);
    await checks(page).getByText('correct now').waitFor();
    await page.getByText('Vertical dimension: all methods side by side').click();
    await page.getByText('Lower by 2 to 4 mm: Interocclusal rest distance.').waitFor();
    await page.getByText('0.5 turn counter clockwise').first().waitFor();
    await page.getByRole('main').getByLabel('Language', { exact: true }).selectOption('de');
    await page.getByText('Susanne sieht').waitFor();
    await page.getByText('Widths of face and teeth:').click();
    await page.getByLabel('Interalar width, in mm').fill('36');
    await page.locator('summary').filter({ hasText: 'Choice of teeth' }).click();
    await page.getByRole('img', { name: 'Ranges that the widths of the face suggest' }).waitFor();
    await page.getByRole('button', { name: 'Add a measured width' }).click();
    await page.getByLabel('Width, mm').fill('8.4');
    await page.getByText('Upper central incisor, old denture: 8.4 mm').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);

    await page.getByLabel(OCCLUSAL_BOX).fill('6.5');
    await page.getByRole('button', { name: 'Save and check' }).click();
    await page.getByText('Was it read in centimetres? Then it is 65 mm.').waitFor();
    await measure(page, OCCLUSAL, '65');
    await page.getByRole('button', { name: 'Save and check' }).click();
    await saved(page);
    await checks(page).getByText('no rest distance is left').waitFor({ state: 'hidden' });
    await comesTo(checks(page).getByText('Interocclusal rest distance: 3 mm'), 1);
    await page.getByText('What the checks said before').click();
    const before = page.getByRole('region', { name: 'interocclusal rest distance' });
    await before.getByText('no rest distance is left').waitFor();
  });

  it('keeps what is typed while somebody else records, and shows both versions where both did', async () => {
    const { id } = found((await smooth.state()).stages.find(({ code }) => code === COMBINED_VISIT));
    person = await signIn(browser, service.url, 'clinician');
    const { page } = person;
    await page.goto(`/chair/stages/${id}`);
    await measure(page, OCCLUSAL, '64');
    const height = (code: string, value: number) => ({
      code,
      value,
      unit: 'mm',
      method: { landmarks: 'nose-tip-chin' },
    });
    await smooth.capture(await smooth.view(id), {
      readings: [70, 70, 70].map((value) => height('vertical-dimension-at-rest', value)),
    });
    await until(async () => (await page.getByLabel(`${REST}, 1. reading, in mm`).inputValue()) === '70');
    expect(await page.getByLabel(OCCLUSAL_BOX).inputValue()).toBe('64');
    await smooth.capture(await smooth.view(id), {
      readings: [66, 66, 66].map((value) => height('occlusal-vertical-dimension', value)),
    });
    const clash = page.getByRole('row', { name: /^Occlusal vertical dimension/ }).filter({ hasText: '66' });
    await clash.waitFor();
    expect(await clash.getByRole('cell').allInnerTexts()).toEqual([
      '64, 64, 64, subnasale gnathion',
      '66, 66, 66, nose tip chin',
    ]);
    await page.getByRole('button', { name: 'Save and check' }).click();
    expect(await page.getByLabel(OCCLUSAL_BOX).inputValue()).toBe('64');
    expect(await faultsOfScreen(page)).toEqual([]);

    // What is typed while the save is on its way is not part of it, and stays.
    await page.getByRole('button', { name: 'Keep what I typed' }).click();
    await measure(page, REST, '67');
    const held: Route[] = [];
    await page.route('**/captures', (route) => {
      held.push(route);
    });
    await page.getByRole('button', { name: 'Save and check' }).click();
    await page.getByLabel('Interalar width, in mm').fill('37');
    await until(() => held.length > 0);
    await found(held[0]).continue();
    await until(async () =>
      (await smooth.view(id)).readings.some(
        ({ code, value }) => code === 'occlusal-vertical-dimension' && value === 64,
      ),
    );
    const teeth = page.getByRole('group').filter({ hasText: 'Choice of teeth' }).last();
    await page.locator('summary').filter({ hasText: 'Choice of teeth' }).click();
    await teeth.getByLabel('Shade').fill('A2');
    await page.reload();
    expect(await page.getByLabel('Interalar width, in mm').inputValue()).toBe('37');
    expect(await page.getByLabel(OCCLUSAL_BOX).inputValue()).toBe('64');
    await until(async () => (await teeth.getByLabel('Shade').inputValue()) === 'A2');
  });

  it('hands the work over with a signature and finishes the visit', async () => {
    const { id } = found((await smooth.state()).stages.find(({ code }) => code === COMBINED_VISIT));
    const view = await smooth.view(id);
    await smooth.capture(view, {
      readings: requiredReadings(view),
      checklist: completeChecklist(view),
      otherCentricRelation: [{ method: 'bimanual-guidance' }],
    });
    person = await signIn(browser, service.url, 'clinician');
    const { page } = person;
    await page.goto(`/chair/stages/${id}`);
    await page.getByText('Fill in and sign').click();
    await page.getByLabel('Disinfected with').fill('surface agent, full contact time');
    const [, time] = /T(\d\d:\d\d)/.exec(await cast.clockNow()) ?? [];
    await page.getByLabel('Disinfected at').last().fill(found(time));
    const order = page.getByRole('region', { name: 'Prescription to the laboratory' });
    await order.getByLabel('Note').fill('Midline as marked');
    await page.getByRole('button', { name: 'Show what will be signed' }).click();
    const preview = page.getByRole('region', { name: 'What the laboratory gets' });
    await preview.getByText('Midline as marked').waitFor();
    await preview.getByText('Lantern Example Laboratory').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByRole('button', { name: 'Sign the prescription' }).click();
    const signed = page.getByText(/The prescription was signed .* by Dr Imogen Thorne-Example/);
    await signed.or(page.getByRole('alert')).first().waitFor();
    expect(await page.getByRole('alert').allTextContents()).toEqual([]);
    await signed.waitFor();
    await page.getByRole('button', { name: 'Finish', exact: true }).click();
    await page.getByRole('button', { name: 'Finish the visit' }).click();
    await page.getByText('visit finished').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    expect((await smooth.view(id)).state).toBe('passed');
  });

  it('draws a tracing by hand and by keys, reads another from a photograph, and compares them once they are kept', async () => {
    const page = await atVisit(traced);
    await page.getByText('Needle-point tracings and other records').click();
    const pad = await beginDrawing(page);
    const said = page.getByRole('status').filter({ hasText: /apex angle|points given/ });
    await said.filter({ hasText: '0 points given, at least 6 are needed' }).waitFor();

    await stroke(page, pad, [0, 0], [7, 3.5]);
    await page.getByText('Left arm (0)').click();
    await stroke(page, pad, [0, 0], [-7, 3.5]);
    await page.getByText('Closures (0)').click();
    await pad.focus();
    for (const key of ['Enter', 'ArrowUp', 'Enter', 'ArrowRight', 'Enter']) await page.keyboard.press(key);
    await page.getByText('Closures (3)').waitFor();
    // By hand: each arm rises by one in two, 26.565 degrees; what is left of 180 is 126.87.
    await said.filter({ hasText: /apex angle 12[67]\.\d degrees/ }).waitFor();
    await page.keyboard.press('Delete');
    await page.getByText('Closures (2)').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('Closures (3)').waitFor();
    await checks(page).getByText('3 closures (5 wanted)').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByRole('button', { name: 'Save and check' }).click();
    await saved(page);

    await beginDrawing(page);
    await page.getByText('Draw on a photograph of the plate').click();
    await page.getByLabel('Photograph or scan of the plate').setInputFiles(await platePhotograph());
    await page.getByRole('button', { name: /^Mark 2, at 640, 120 pixels/ }).press('ArrowLeft');
    await page.getByRole('button', { name: /^Mark 2, at 639, 120 pixels/ }).press('ArrowRight');
    await page.getByRole('button', { name: 'Find the traced lines' }).click();
    await page.getByText('Enter the length in millimetres, above 0.').waitFor();
    // The marks begin 480 pixels apart, at 20 pixels per mm.
    await page.getByLabel('Length between the marks, mm').fill('24');
    await page.getByRole('button', { name: 'Find the traced lines' }).click();
    await page.getByText(/\d+ points were found/).waitFor({ timeout: 60_000 });
    await said.filter({ hasText: /apex angle (119|120)\.\d degrees/ }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByRole('button', { name: 'Save and check' }).click();
    await saved(page);

    const attempts = page.getByRole('region', { name: 'Attempts of this sitting, side by side' });
    await attempts.getByRole('row', { name: /recorded 2/ }).waitFor();
    await page.getByText(/2 attempts with an apex: angles from 1(19|20)\.\d to 12[67]\.\d degrees/).waitFor();
    await attempts.getByRole('img', { name: 'Drawing: recorded 1' }).waitFor();
    const drawnWidth = 'document.querySelector(\'img[alt="Drawing: recorded 1"]\').naturalWidth';
    await until(async () => (await page.evaluate<number>(drawnWidth)) > 0);
    const { id } = found((await traced.state()).stages.find(({ code }) => code === COMBINED_VISIT));
    const { tracings } = await traced.view(id);
    expect(tracings.map(({ isDrawn, apex }) => [isDrawn, apex])).toEqual([
      [true, 'single'],
      [true, 'single'],
    ]);
  });

  it('raises an alert for three failed tracings, and moves nothing until its plan is accepted', async () => {
    const page = await atVisit(troubled);
    await page.getByText('Needle-point tracings and other records').click();
    for (const attempt of [0, 1, 2]) {
      await page.getByRole('button', { name: 'Add a tracing' }).click();
      await page.getByLabel('Apex', { exact: true }).nth(attempt).selectOption('none');
    }
    await checks(page).getByText('3 failed in this visit').waitFor();
    await page.getByRole('button', { name: 'Save and check' }).click();
    await page.getByRole('link', { name: 'Look at the alert' }).click();
    const before = await troubled.state();
    const accept = page.getByRole('button', { name: /^Accept/ }).first();
    await accept.waitFor({ timeout: 60_000 });
    expect(await faultsOfScreen(page)).toEqual([]);
    expect((await troubled.state()).version).toBe(before.version);

    await accept.click();
    await page.getByText('A way was accepted.').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    const goes = (await troubled.state()).stages.filter(({ code }) => code === COMBINED_VISIT);
    expect(goes.map(({ round, state }) => [round, state])).toEqual([
      [1, 'repeated'],
      [2, 'planned'],
    ]);
  });

  it('counts what was made again by cause and origin, for laboratory and manager alike, with what stands behind it', async () => {
    const { number } = await troubled.state();
    for (const role of ['lab', 'manager'] as const) {
      if (role === 'manager') await person.leave();
      person = await signIn(browser, service.url, role);
      const { page } = person;
      await page.goto('/bench');
      await page.getByRole('link', { name: 'What was made again' }).click();
      await page.getByText(/^1 remake in 1 case, /).waitFor();
      await page.getByRole('img', { name: /^By cause: No usable jaw relation record in this visit 1\./ }).waitFor();
      await page.getByRole('link', { name: /^No usable jaw relation record in this visit: show 1 remake$/ }).click();
      const entry = page.getByRole('listitem').filter({ has: page.getByRole('link', { name: number, exact: true }) });
      await entry.getByText(/ by a check · back to “.*, both arches” · discarded: /).waitFor();
      await page.getByRole('heading', { name: /^One by one: No usable/ }).waitFor();
      expect(await entry.getByRole('link', { name: 'Look at the alert' }).count()).toBe(role === 'manager' ? 1 : 0);
      await page.getByRole('link', { name: 'Show all' }).click();
      expect(await faultsOfScreen(page)).toEqual([]);
      await page.getByLabel('First day').fill('2020-01-01');
      await page.getByRole('button', { name: 'Show', exact: true }).click();
      await page.getByText('Enter two days, the later one second').waitFor();
      expect(person.complaints.take()).toEqual([]);
    }
  });
});
