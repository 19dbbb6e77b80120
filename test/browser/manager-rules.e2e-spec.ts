import { jest } from '@jest/globals';
import { signIn } from '../support/browser.js';
import { dayOf } from '../support/day.js';
import { Keys } from '../support/keys.js';
import { bookCase, enterPatient } from '../support/prepared-cases.js';
import { faultsOfScreen } from '../support/screens.js';
import { until } from '../support/until.js';

jest.setTimeout(240_000);

describe('the manager', () => {
  const day = dayOf('manager');

  it('shows figures that do not judge what is too little to judge', async () => {
    const { page } = day;
    await page.goto('/practice/figures');
    const use = page.getByRole('region', { name: 'Use of chairs, clinicians and benches' });
    await use.getByRole('row', { name: /Chair 1 North clinic/ }).waitFor();
    await page.getByRole('region', { name: 'Nothing to count yet' }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('tries a table of patients, takes it in, and keeps what was rejected', async () => {
    const { page } = day;
    await page.goto('/practice/import');
    const patients = page.getByRole('region', { name: 'Patients from a table' });
    await patients.getByRole('button', { name: 'Try it' }).click();
    await patients.getByText('Choose a file of at most 5 MB.').waitFor();
    const table = 'given name,family name,birth date\nIna,Import-Example,1951-03-28\nIvo,Later-Example,2099-01-01\n';
    await patients
      .getByLabel('File: Patients from a table')
      .setInputFiles({ name: 'patients.csv', mimeType: 'text/csv', buffer: Buffer.from(table) });
    await patients.getByRole('button', { name: 'Try it' }).click();
    await patients.getByText('Tried only, nothing was written.').waitFor();
    await patients.getByText('2 rows: 1 new, 0 changed, 0 already there, 1 rejected.').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await patients.getByRole('button', { name: 'Take it in' }).click();
    await patients.getByText('Written.', { exact: true }).waitFor();
    await patients.getByRole('link', { name: 'Save the rejected rows with their reasons' }).waitFor();
  });

  it('takes nothing in on the word of a trial of another file', async () => {
    const { page } = day;
    await page.goto('/practice/import');
    const patients = page.getByRole('region', { name: 'Patients from a table' });
    const choose = (name: string) =>
      patients.getByLabel('File: Patients from a table').setInputFiles({
        name: `${name}.csv`,
        mimeType: 'text/csv',
        buffer: Buffer.from(`given name,family name,birth date\n${name},Trial-Example,1951-03-28\n`),
      });
    await choose('Una');
    await patients.getByRole('button', { name: 'Try it' }).click();
    await patients.getByRole('button', { name: 'Take it in' }).waitFor();
    await choose('Dua');
    await patients.getByText('Tried only, nothing was written.').waitFor({ state: 'detached' });
    expect(await patients.getByRole('button', { name: 'Take it in' }).count()).toBe(0);

    const calendar = page.getByRole('region', { name: 'Busy times from a calendar' });
    const field = calendar.getByLabel('File: Busy times from a calendar');
    const named = calendar.getByLabel('Name of this calendar');
    const file = (name: string) => ({ name, mimeType: 'text/calendar', buffer: Buffer.from('BEGIN:VCALENDAR') });
    await field.setInputFiles(file('una.ics'));
    expect(await named.inputValue()).toBe('una.ics');
    await field.setInputFiles(file('dua.ics'));
    expect(await named.inputValue()).toBe('dua.ics');
  });

  it('puts the visits of a path in another order, by hand and by keyboard, and takes it back', async () => {
    const { page } = day;
    await openReline();
    const inOrder = () =>
      page.evaluate<string[]>(`[...document.querySelectorAll('[data-visit]')].map((each) => each.dataset.visit)`);
    await page.locator('[data-visit="E2"]').waitFor();
    // Where things lie is known once all that stands above them is there.
    await sound().waitFor();
    const shipped = await inOrder();
    expect(shipped.slice(0, 3)).toEqual(['E1', 'E2', 'R1']);

    const [from, to] = [page.locator('[data-visit="R1"]'), page.locator('[data-visit="R2"]')];
    await to.scrollIntoViewIfNeeded();
    const at = async (visit: typeof from) => {
      const { x, y, width, height } = (await visit.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
      return [x + width / 2, y + height / 2] as const;
    };
    const [start, end] = [await at(from), await at(to)];
    await page.mouse.move(...start);
    await page.mouse.down();
    await page.mouse.move(...end, { steps: 5 });
    await page.mouse.up();
    expect((await inOrder()).slice(2, 4)).toEqual(['R2', 'R1']);
    await button('Undo').click();
    expect(await inOrder()).toEqual(shipped);

    await page.getByLabel('Part', { exact: true }).selectOption('visit/E2');
    await new Keys(page).press(button('Earlier'));
    expect((await inOrder()).slice(0, 2)).toEqual(['E2', 'E1']);
    await page.getByText('E2 is visit 1 of').waitFor();
    await page.getByText(/to mend before it can be published/).waitFor();
    expect(await button('Publish as version 2').isDisabled()).toBe(true);
    await button('Undo').click();
    await button('Another like it').click();
    expect(await inOrder()).toContain('E2a');
    await button('Take the visit out').click();
    expect(await inOrder()).toEqual(shipped);
    await sound().waitFor();
    await button('Give up what I typed').click();
  });

  it('gives a visit a line and a gate by keyboard, and is led to what is wrong with them', async () => {
    const { page } = day;
    const keys = new Keys(page);
    await openReline();
    await sound().waitFor();
    await keys.reach(page.locator('[data-part="visit/E1"]'));
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Visit: E2 · Re-insertion of the relined denture' }).waitFor();
    await keys.press(button('Add a line'));
    const line = page.getByLabel('Line 1', { exact: true });
    await line.and(page.locator(':focus')).waitFor();
    await page.getByText('Enter something here, up to 500 characters.', { exact: true }).waitFor();
    expect(await button('Publish as version 2').isDisabled()).toBe(true);
    expect(await faultsOfScreen(page)).toEqual([]);
    await keys.type(line, 'Told how to clean the denture');
    await keys.press(button('Add a line'));
    await keys.type(page.getByLabel('Line 2', { exact: true }), 'Asked who cleans it');
    await keys.press(button('Earlier: Asked who cleans it'));
    expect(await line.inputValue()).toBe('Asked who cleans it');
    await button('Later: Asked who cleans it').and(page.locator(':focus')).waitFor();
    await keys.press(button('Take out: Asked who cleans it'));
    await sound().waitFor();

    await keys.press(button('Add a gate before it'));
    await page.getByRole('heading', { name: 'Gate: New gate' }).waitFor();
    await keys.type(page.getByLabel('Title', { exact: true }), 'Time without a denture agreed');
    await page.getByText('Choose or add at least one.', { exact: true }).waitFor();
    await keys.press(button('Add what it asks for'));
    await keys.choose(page.getByLabel('Asks for 1', { exact: true }), 'On the checklist');
    await page.getByLabel('What 1', { exact: true }).selectOption({ label: 'E2 · Told how to clean the denture' });
    await page.getByText('It asks at E2, later than what it stands before.', { exact: true }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByLabel('Part', { exact: true }).selectOption('path/');
    await keys.press(button('Time without a denture agreed: It asks at E2, later than what it stands before.'));
    const asked = page.getByLabel('What 1', { exact: true });
    await asked.and(page.locator(':focus')).waitFor();
    await asked.selectOption({ label: 'E1 · Time without a denture agreed' });
    await sound().waitFor();

    await page.reload();
    await sound().waitFor();
    await differences()
      .getByRole('row', { name: /Gate: Time without a denture agreed added/ })
      .waitFor();
  });

  it('puts a step between two others with its waits, refuses what cannot be, and publishes the next version', async () => {
    const { page } = day;
    await openReline();
    await sound().waitFor();
    await page.locator('[data-part="visit/E2"]').click();
    await button('Add a line').click();
    await page.getByLabel('Line 1', { exact: true }).fill('Told how to clean the denture');
    await button('Add a gate before it').click();
    await page.getByLabel('Title', { exact: true }).fill('Time without a denture agreed');
    await button('Add what it asks for').click();
    await page.getByLabel('Asks for 1', { exact: true }).selectOption('On the checklist');
    await page.getByLabel('What 1', { exact: true }).selectOption({ label: 'E1 · Time without a denture agreed' });
    await page.locator('[data-part="step/finish"]').click();
    await page.getByText('Arrows out', { exact: true }).click();
    await button('Add a step after it').click();
    const title = page.getByLabel('Title', { exact: true });
    await title.fill('Soak in water');
    await page.getByLabel('What 1', { exact: true }).selectOption('sets or cools');
    const minutes = page.getByLabel('Minutes 1', { exact: true });
    await minutes.fill('soon');
    await page.getByText('Enter a number.', { exact: true }).waitFor();
    await minutes.fill('2');
    await page.getByText('At least 5.', { exact: true }).waitFor();
    expect(await button('Publish as version 2').isDisabled()).toBe(true);
    await minutes.fill('120');
    const limit = (bound: string) =>
      page.getByRole('group', { name: `${bound}, Deflask, finish and polish`, exact: true });
    await limit('At least').getByLabel('Unit').selectOption('minutes');
    await limit('At least').getByLabel('How long').fill('90');
    await limit('At most').getByLabel('Unit').selectOption('minutes');
    const most = limit('At most').getByLabel('How long');
    await most.fill('60');
    await page.getByText('The least, 90, is above the most, 60.', { exact: true }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await most.fill('240');
    await sound().waitFor();

    await page.getByLabel('Part', { exact: true }).selectOption('loop/reline-does-not-fit');
    await page.getByLabel('Back to', { exact: true }).selectOption({ label: 'Flask, pack the new fitting surface' });
    await page.getByRole('checkbox', { name: 'Impression inside the denture' }).uncheck();
    expect(await faultsOfScreen(page)).toEqual([]);
    await button('Publish as version 2').click();
    await page.getByText(/, version 2\./).waitFor();
    const said = (name: RegExp) => differences().getByRole('row', { name }).waitFor();
    await said(/Checklist, Told how to clean the denture added/);
    await said(/Gate: Time without a denture agreed added/);
    await said(/Laboratory step: Soak in water added/);
    await said(/Way back: .* What happens changed The case goes back: E1 .* The case goes back: Flask/);
    await said(/Is thrown away changed Impression inside the denture –/);
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  async function openReline(): Promise<void> {
    await day.page.goto('/practice/paths');
    await day.page.getByRole('link', { name: 'Laboratory reline' }).click();
    await day.page.getByRole('link', { name: 'Change it or copy it' }).click();
  }
  const button = (name: string) => day.page.getByRole('button', { name, exact: true });
  const sound = () => day.page.getByText('The path is sound and can be published.');
  const differences = () => day.page.getByRole('group', { name: /differences?$/ });

  it('sets reminders in hours, adds a line of its own, and reads it as patients will', async () => {
    const { page } = day;
    await page.goto('/practice/rules');
    await page.getByLabel(/^By mail/).fill('soon');
    await page.getByLabel('English').fill('Please ring the side door.');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Enter up to six different numbers').waitFor();
    await page.getByLabel(/^By mail/).fill('72, 3');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Saved.').waitFor();
    await page.getByRole('article').first().getByText('Please ring the side door.').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('writes a message in the practice’s own words, and the next patient gets it', async () => {
    const { page } = day;
    await page.goto('/practice/messages');
    await page.getByLabel('Message and language').selectOption('Visits booked, English');
    const text = page.getByLabel('Text', { exact: true });
    const delivered = await text.inputValue();
    expect(delivered).toContain('{visits}');
    await text.fill('Dear {nobody}, please come.');
    await page.getByRole('button', { name: 'Save the messages' }).click();
    await page.getByText('There is no place {nobody} here. Put {visits}, {move} and {phone} somewhere').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await text.fill(delivered.replace('Hello {name},', 'Dear {name}, we look forward to you.'));
    await page.getByRole('button', { name: 'Save the messages' }).click();
    await page.getByText('Saved.', { exact: true }).waitFor();
    await page.getByRole('article').getByText('we look forward to you.').waitFor();

    const browser = page.context().browser();
    if (browser === null) throw new Error('The page has no browser.');
    const desk = await signIn(browser, new URL(page.url()).origin, 'front-desk');
    await bookCase(desk.page, await enterPatient(desk.page, { mail: 'own@example.test', reminderConsent: ['mail'] }));
    await desk.leave();
    await page.goto('/caught-mail');
    const mail = page.getByText('to own@example.test').first();
    await until(async () => {
      await page.reload();
      await page.getByRole('heading', { level: 1 }).waitFor();
      return (await mail.count()) > 0;
    });
    await mail.click();
    await page.getByText('we look forward to you.').first().waitFor();

    await page.goto('/practice/messages');
    await page.getByLabel('Message and language').selectOption('Visits booked, English (own)');
    await page.getByRole('button', { name: 'Take the delivered text' }).click();
    await page.getByRole('button', { name: 'Save the messages' }).click();
    await page.getByText('Saved.', { exact: true }).waitFor();
    expect(await text.inputValue()).toBe(delivered);
  });

  it('sets a range of the practice’s own, with the reason', async () => {
    const { page } = day;
    await page.goto('/practice/ranges');
    const least = page.getByLabel(/^Least of /).first();
    await least.fill('1');
    await page.getByRole('button', { name: 'Save the ranges' }).click();
    await page.getByText(/^Enter both, or neither/).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await least.fill('');
    await page.getByLabel('Why it is changed').fill('Looked through, all stays as it is.');
    await page.getByRole('button', { name: 'Save the ranges' }).click();
    await page.getByText('Saved.').waitFor();
    await page.getByRole('cell', { name: 'Looked through, all stays as it is.' }).waitFor();
  });

  it('keeps its own words for teeth, one on each line', async () => {
    const { page } = day;
    await page.goto('/practice/teeth');
    const shades = page.getByLabel('Shades');
    await shades.fill(`light\n${'x'.repeat(61)}`);
    await page.getByRole('button', { name: 'Save the lists' }).click();
    await page.getByText('Up to 100 lines of 60 characters each.').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await shades.fill('light\nwarm');
    await page.getByRole('button', { name: 'Save the lists' }).click();
    await page.getByText('Saved.').waitFor();
    await page.reload();
    expect(await shades.inputValue()).toBe('light\nwarm');
  });

  it('chooses between both versions where somebody else saved the lists meanwhile', async () => {
    const { page } = day;
    await page.goto('/practice/teeth');
    await page.getByLabel('Shades').fill('light\ndark');
    const other = await page.context().newPage();
    await other.goto('/practice/teeth');
    await other.getByLabel('Shades').fill('light\nwarm\ncool');
    await other.getByRole('button', { name: 'Save the lists' }).click();
    await other.getByText('Saved.').waitFor();
    await other.close();
    day.complaints.expect(412, /\/tooth-list$/);
    await page.getByRole('button', { name: 'Save the lists' }).click();
    const clash = page.getByRole('row', { name: /^Shades/ });
    await clash.getByText('cool').waitFor();
    expect(await clash.getByRole('cell').allInnerTexts()).toEqual(['light\ndark', 'light\nwarm\ncool']);
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByRole('button', { name: 'Keep what I typed' }).click();
    await page.getByRole('button', { name: 'Save the lists' }).click();
    await page.getByText('Saved.').waitFor();
  });

  it('reads per rule what became of failed checks', async () => {
    const { page } = day;
    await page.goto('/practice/checks');
    await page
      .getByRole('row', { name: /Rest distance/i })
      .first()
      .waitFor();
    await page.getByText('Counted per rule, never per person.').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });
});
