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
    await page.goto('/practice/paths');
    await page.getByRole('link', { name: 'Laboratory reline' }).click();
    await page.getByRole('link', { name: 'Change it or copy it' }).click();
    const inOrder = () =>
      page.evaluate<string[]>(`[...document.querySelectorAll('[data-visit]')].map((each) => each.dataset.visit)`);
    const button = (name: string) => page.getByRole('button', { name });
    await page.locator('[data-visit="E2"]').waitFor();
    // Where things lie is known once all that stands above them is there.
    await page.getByText('The path is sound and can be published.').waitFor();
    const shipped = await inOrder();
    expect(shipped.slice(0, 3)).toEqual(['E1', 'E2', 'R1']);

    const [from, to] = [page.locator('[data-visit="R1"]'), page.locator('[data-visit="R2"]')];
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

    await page.getByLabel('Visit', { exact: true }).selectOption('E2');
    await new Keys(page).press(button('Earlier'));
    expect((await inOrder()).slice(0, 2)).toEqual(['E2', 'E1']);
    await page.getByText('E2 is visit 1 of').waitFor();
    await page.getByText(/to mend before it can be published/).waitFor();
    expect(await button('Publish as version 2').isDisabled()).toBe(true);
    await button('Undo').click();
    await button('Another like it').click();
    expect(await inOrder()).toContain('E2a');
    await button('Take it out').click();
    expect(await inOrder()).toEqual(shipped);
    await page.getByText('The path is sound and can be published.').waitFor();
    await button('Give up what I typed').click();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('changes a path, is told its faults while typing, and publishes the next version', async () => {
    const { page } = day;
    await page.goto('/practice/paths');
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByRole('link', { name: 'Laboratory reline' }).click();
    await page.getByRole('img', { name: /visits? with/ }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByRole('link', { name: 'Change it or copy it' }).click();
    const publish = page.getByRole('button', { name: 'Publish as version 2' });
    await page.getByText('The path is sound and can be published.').waitFor();
    const most = page.getByLabel(/^Most \(/).first();
    await most.fill('');
    expect(await most.inputValue()).toBe('');
    await most.fill('5');
    await page
      .getByText(/fault to mend before it can be published|faults to mend before it can be published/)
      .waitFor();
    expect(await publish.isDisabled()).toBe(true);
    await most.fill('90');
    await page
      .getByRole('group', { name: /differences$/ })
      .getByRole('cell', { name: '90', exact: true })
      .waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await publish.click();
    await page.getByText(/, version 2\./).waitFor();
    await page
      .getByRole('group', { name: /differences$/ })
      .getByRole('cell', { name: '90', exact: true })
      .waitFor();
  });

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
