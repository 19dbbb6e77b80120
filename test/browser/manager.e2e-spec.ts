import { jest } from '@jest/globals';
import { practiceView } from '@archwright/contracts';
import { Cast } from '../../apps/cli/src/demo/cast.js';
import { bookedCase } from '../e2e/booking-practice.js';
import { demoPassword } from '../../apps/cli/src/demo/scenario.js';
import { enterAs } from '../support/browser.js';
import { comesTo } from '../support/comes-to.js';
import { dayOf } from '../support/day.js';
import { faultsOfScreen } from '../support/screens.js';

jest.setTimeout(240_000);

describe('the manager', () => {
  const day = dayOf('manager', async ({ url }) => {
    const cast = new Cast(url);
    await cast.signIn();
    const practice = await cast.desk.call({ method: 'GET', path: '/practice', answer: practiceView });
    await bookedCase({ desk: cast.desk, practice }, { path: 'repair', clinics: 1 });
  });

  it('changes hours, sees first which visits would be left without a place, and is told what a wrong rule lacks', async () => {
    const { page } = day;
    await page.getByRole('link', { name: 'Set-up' }).click();
    await page.getByRole('heading', { name: 'What the practice consists of' }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByRole('link', { name: 'North clinic', exact: true }).click();
    const days = page.getByRole('group', { name: 'Open: Time 1' });
    await page.getByText('Every week on Monday to Friday, 08:30 to 17:30.').waitFor();
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
    const { page } = day;
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

  it('is told when nothing stands under an address', async () => {
    const { page } = day;
    for (const place of ['setup', 'users']) {
      await page.goto(`/practice/${place}/00000000-0000-4000-8000-000000000099`);
      await page.getByRole('heading', { name: 'Nothing here' }).waitFor();
      expect(await page.getByRole('main').count()).toBe(1);
      expect(await faultsOfScreen(page)).toEqual([]);
    }
  });

  it('finds nothing on the screen of one person that was typed for another', async () => {
    const { page } = day;
    await page.goto('/practice/users');
    const accounts = page.getByRole('table').getByRole('link');
    const [first, second] = [accounts.nth(0), accounts.nth(1)];
    const [address, name] = [await second.getAttribute('href'), await second.innerText()];
    await first.click();
    await page.getByLabel('Name', { exact: true }).fill('Typed for the first');
    await page.getByRole('button', { name: 'Set a new password' }).click();
    await page.getByRole('button', { name: 'Yes, do it' }).waitFor();
    await page.evaluate(`history.pushState(null, '', ${JSON.stringify(address)})`);
    await page.getByRole('heading', { name }).waitFor();
    expect(await page.getByLabel('Name', { exact: true }).inputValue()).toBe(name);
    await comesTo(page.getByRole('button', { name: 'Yes, do it' }), 0);
  });

  it('gives a person an account, ends it, and finds both in the audit trail', async () => {
    const { page } = day;
    await page.getByRole('link', { name: 'People who sign in' }).click();
    await page.getByRole('button', { name: 'Give the account' }).click();
    await page.getByText('Enter at least 15 characters.').waitFor();
    await page.getByLabel('Sign-in name').fill('nia@example.test');
    await page.getByLabel('Name', { exact: true }).fill('Nia New-Example');
    await page.getByRole('checkbox', { name: 'North clinic' }).check();
    await page.getByRole('button', { name: 'Suggest one' }).click();
    await page.getByRole('button', { name: 'Give the account' }).click();
    await page.getByText('nia@example.test signs in with the password').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByRole('link', { name: 'Nia New-Example' }).click();
    await page.getByRole('button', { name: 'End the account' }).click();
    await page.getByText('Every session of this person ends now. What they did stays on record.').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByRole('button', { name: 'Yes, do it' }).click();
    await page.getByRole('button', { name: 'Let this person in again' }).waitFor();

    await page.goto('/practice/audit?deed=user-');
    const trail = page.getByRole('group', { name: 'Who did what' });
    await trail.getByRole('cell', { name: 'user ended' }).waitFor();
    await trail.getByRole('cell', { name: 'user added' }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByLabel('Case number').fill('12');
    await page.getByRole('button', { name: 'Search' }).click();
    await page.getByText('Enter a case number such as 27-0012.').waitFor();
  });

  it('sets a new password of their own and is asked for it', async () => {
    const { page } = day;
    await page.getByRole('link', { name: 'Password' }).click();
    await page.getByLabel('Present password').fill(demoPassword);
    await page.getByLabel('New password').fill('another-quiet-bench');
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByRole('button', { name: 'Change it' }).click();
    await page.getByText('You have been signed out after a while.').waitFor();
    await enterAs(page, 'manager', 'another-quiet-bench');
    await page.getByRole('button', { name: 'Sign out' }).waitFor();
    await page.getByRole('link', { name: 'Password' }).click();
    await page.getByLabel('Present password').fill('another-quiet-bench');
    await page.getByLabel('New password').fill(demoPassword);
    await page.getByRole('button', { name: 'Change it' }).click();
    await page.getByText('You have been signed out after a while.').waitFor();
  });
});
