import { jest } from '@jest/globals';
import type { Browser, Locator, Page } from 'playwright-core';
import { Cast } from '../../apps/cli/src/demo/cast.js';
import { completeChecklist, requiredReadings } from '../../apps/cli/src/demo/readings.js';
import { demoPassword, scenario } from '../../apps/cli/src/demo/scenario.js';
import { found } from '../e2e/booking-practice.js';
import { openBrowser, openScreen, type DemoRole, type Person } from '../support/browser.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { Keys } from '../support/keys.js';
import { bookCase, enterPatient } from '../support/prepared-cases.js';
import { until } from '../support/until.js';
import { BenchDay } from './bench-day.js';
import { COMBINED_VISIT, bookedTreatment } from './booked-treatment.js';

jest.setTimeout(240_000);

/** Nobody touches a pointer here; that the focus is never lost on the way is watched as in every test. */
describe('by keyboard alone', () => {
  let service: DemoService;
  let browser: Browser;
  let person: Person;
  let page: Page;
  let keys: Keys;

  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
  });
  afterAll(async () => {
    await browser.close();
    await service.stop();
  });
  afterEach(async () => {
    expect(person.complaints.take()).toEqual([]);
    await person.leave();
  });

  async function signInAs(role: DemoRole): Promise<void> {
    person = await openScreen(browser, service.url);
    ({ page } = person);
    keys = new Keys(page);
    const { signInName } = found(scenario.users.find((each) => each.role === role));
    await page.goto('/');
    await keys.type(page.getByLabel('Sign-in name'), signInName);
    await keys.type(page.getByLabel('Password', { exact: true }), demoPassword);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Sign out' }).waitFor();
  }
  const button = (name: string | RegExp): Locator => page.getByRole('button', { name });
  const link = (name: string | RegExp): Locator => page.getByRole('link', { name });
  const heading = (name: string | RegExp): Locator => page.getByRole('heading', { name });
  const said = (words: string | RegExp): Promise<void> => page.getByText(words).first().waitFor();

  it('the front desk checks in, moves a visit with all that follows, and calls whom it concerns', async () => {
    await signInAs('front-desk');
    const view = await bookCase(page, await enterPatient(page, { familyName: 'Keyed', phone: '+44 20 7946 0013' }));
    const first = found(found(view.stages[0]).startsAt).slice(0, 10);
    await page.goto(`/desk?on=${first}`);
    await keys.press(button('Arrived: Test Keyed'));
    await page.getByRole('row', { name: /Keyed.*arrived/ }).waitFor();
    await keys.press(button('Not here yet: Test Keyed'));
    await button('Arrived: Test Keyed').waitFor();

    await page.keyboard.press('/');
    await page.keyboard.type('keyed');
    await page.keyboard.press('Enter');
    await keys.press(link(/^Keyed, Test/));
    // What was found names the case too, and stays until the patient's own page is there.
    await page.getByRole('textbox', { name: 'Telephone' }).waitFor();
    await keys.press(link(view.number));
    await keys.press(link(/^Move or cancel: Border molding/));
    await keys.choose(page.getByLabel('Times that leave every other visit where it is'), 'Another');
    await keys.typeDay(page.getByLabel('Day', { exact: true }), '2027-01-14');
    await keys.typeTime(page.getByLabel('Time, in steps of 5 minutes'), '09:00');
    await keys.type(page.getByLabel('Reason'), 'A wedding');
    await keys.press(button('Show what would change'));
    await heading('What would change').waitFor();
    await keys.press(button('Change it'));
    await page.getByRole('row', { name: /Border molding.*Thu 14 Jan, 09:00/ }).waitFor();
    await keys.press(link('See who gains most by it'));
    await said(/\d cases? (was|were) looked at/);

    await keys.press(page.getByRole('navigation', { name: 'Desk' }).getByRole('link', { name: 'Calls to make' }));
    const call = page.getByRole('listitem').filter({ hasText: /Keyed.*visits of case \S+ have new times/s });
    await keys.press(call.getByRole('button', { name: 'No answer' }));
    await call.getByText(/no answer \(Robin Desk-Example\)/).waitFor();
    await keys.press(call.getByRole('button', { name: 'Reached' }));
    await call.getByText(/^done/).waitFor();
  });

  it('the bench starts, asks, rejects, prints tickets and moves work', async () => {
    const day = await BenchDay.prepare(service.url, { booked: 1, examined: 1 });
    const { number, id } = found(day.cases[0]);
    await day.goToWorkOf(id);
    await signInAs('lab');
    const act = (action: string, step: string) => button(`${action}: ${number}, ${step}`);
    await keys.press(button(/^Scanning, .*: 15 of 540 minutes/));
    await heading(/^Scanning, /).waitFor();
    await keys.press(act('Start', 'Scan'));
    await keys.press(act('Pause', 'Scan'));
    await keys.press(act('Start', 'Scan').or(act('Go on', 'Scan')));
    await keys.press(act('Finish', 'Scan'));
    await keys.press(page.getByRole('link', { name: 'All work centres' }).or(button('All work centres')).first());
    await keys.press(act('Ask the clinic', 'Design'));
    await keys.press(button('Send question'));
    await said('Write it down, up to 500 characters.');
    await keys.type(page.getByLabel(/^Question to the clinic/), 'The scan ends too early. Again?');
    await keys.press(button('Send question'));
    await said('stands still until the clinic answers');
    await keys.press(act('Reject', 'Design'));
    await keys.type(page.getByLabel(/^What is wrong with the work/), 'The scan is distorted.');
    await keys.press(button('Reject the work'));
    await page
      .getByRole('status')
      .filter({ hasText: `Rejected, and the clinic is told: ${number}` })
      .waitFor();

    await keys.press(page.getByRole('link', { name: 'Job tickets', exact: true }));
    await keys.press(page.getByRole('checkbox', { name: /^Print: / }).first(), 'Space');
    await keys.press(button('Choose all'));
    await keys.press(page.getByRole('link', { name: 'Bench', exact: true }));
    await keys.press(link('What was made again'));
    await heading('Made again').waitFor();
    await page.keyboard.press('/');
    await page.keyboard.type(number);
    await page.keyboard.press('Enter');
    await keys.press(link(number));
    await heading(new RegExp(`^Case ${number} `)).waitFor();
  });

  it('the bench takes a better plan', async () => {
    const day = await BenchDay.prepare(service.url, { booked: 1, examined: 1 });
    await day.goToWorkOf(found(day.cases[0]).id, 30);
    await signInAs('lab');
    await keys.press(button('Look for better plans'));
    const proposal = page.getByRole('article', { name: 'Move work within its slack' });
    await keys.press(proposal.locator('summary').filter({ hasText: /steps? to move/ }));
    await keys.press(proposal.getByRole('button', { name: /^Accept and move the work/ }));
    await said('The work has moved. No visit has.');
  });

  it('the clinician measures, traces, chooses teeth, signs and ends a visit', async () => {
    const cast = new Cast(service.url);
    await cast.signIn();
    const treatment = await bookedTreatment(cast);
    await treatment.consent();
    await treatment.completeStage('D1');
    await treatment.makeLabWork('D1');
    const { number, stages } = await treatment.state();
    const visit = found(stages.find(({ code }) => code === COMBINED_VISIT));
    await cast.moveClock(found(visit.startsAt));

    await signInAs('clinician');
    await keys.press(page.getByRole('listitem').filter({ hasText: number }).getByRole('link'));
    await keys.press(button('Start the visit'));
    await said('visit under way');
    for (const [what, mm] of [
      ['Vertical dimension at rest', '68'],
      ['Occlusal vertical dimension', '65'],
    ] as const) {
      for (const n of ['1', '2', '3']) await keys.type(page.getByLabel(`${what}, ${n}. reading, in mm`), mm);
      await keys.choose(page.getByLabel(`${what}: Which two skin marks?`), 'subnasale');
    }
    await keys.press(button('Save and check'));
    await said('Nothing new to save.');
    await keys.press(page.locator('summary').filter({ hasText: 'Vertical dimension: all methods side by side' }));
    await keys.press(page.locator('summary').filter({ hasText: 'Needle-point tracings and other records' }));
    await keys.press(button('Draw a tracing'));
    await keys.choose(page.getByLabel('Stylus on').last(), 'lower');
    await keys.reach(page.getByRole('application', { name: 'Plate of attempt 1' }));
    for (const key of ['Enter', 'ArrowUp', 'Enter', 'ArrowRight', 'Enter', 'Delete']) await page.keyboard.press(key);
    await said('2 points given, at least 6 are needed');
    await keys.press(
      button(/^Take attempt 1 away/)
        .or(button(/^Remove/))
        .first(),
    );
    await keys.press(page.locator('summary').filter({ hasText: 'Choice of teeth' }));
    const teeth = page.getByRole('group').filter({ hasText: 'Choice of teeth' }).last();
    await keys.type(teeth.getByLabel('Shade'), 'A light one');
    await keys.press(teeth.getByRole('button', { name: 'Keep this choice' }));
    await said(/^Kept .* by Dr Imogen Thorne-Example/);

    // What is left of the long list is recorded behind the screen.
    await until(async () => !(await treatment.view(visit.id)).checking);
    const view = await treatment.view(visit.id);
    await treatment.capture(view, {
      readings: requiredReadings(view),
      checklist: completeChecklist(view),
      otherCentricRelation: [{ method: 'bimanual-guidance' }],
    });
    await said('Everything asked for is recorded and no check has failed.');
    await keys.press(page.locator('summary').filter({ hasText: 'Fill in and sign' }));
    await keys.type(page.getByLabel('Disinfected with'), 'surface agent, full contact time');
    const [, time = ''] = /T(\d\d:\d\d)/.exec(await cast.clockNow()) ?? [];
    await keys.typeTime(page.getByLabel('Disinfected at').last(), time);
    await keys.press(button('Sign the prescription'));
    await said(/The prescription was signed .* by Dr Imogen Thorne-Example/);
    await keys.press(page.getByRole('button', { name: 'Finish', exact: true }));
    await keys.press(button('Finish the visit'));
    await said('visit finished');
  });

  it('the manager changes a chair, a path, a message and an account, and finds who did it', async () => {
    await signInAs('manager');
    await keys.press(link('Set-up'));
    await keys.press(page.getByRole('link', { name: 'Chair 1', exact: true }).first());
    await keys.press(button('Take it out of use'));
    await said(/None of \d+ booked times? to come is touched|would have no place any more/);
    await keys.press(
      link('Back to the set-up')
        .or(link(/set-up/i))
        .first(),
    );

    await keys.press(page.getByRole('link', { name: 'Practice', exact: true }));
    await keys.press(link('Treatment paths'));
    await keys.press(link('Laboratory reline'));
    await keys.press(link('Change it or copy it'));
    await keys.choose(page.getByLabel('Visit', { exact: true }), 'E2');
    await keys.press(button('Earlier'));
    await said('E2 is visit 1 of');
    await keys.press(button('Undo'));
    await keys.press(button('Another like it'));
    await keys.press(button('Take it out'));
    await said('The path is sound and can be published.');

    await keys.press(page.getByRole('link', { name: 'Practice', exact: true }));
    await keys.press(
      link('Import')
        .or(link(/import|files/i))
        .first(),
    );
    const patients = page.getByRole('region', { name: 'Patients from a table' });
    const table = 'given name,family name,birth date\nIna,Import-Example,1951-03-28\n';
    const file = { name: 'patients.csv', mimeType: 'text/csv', buffer: Buffer.from(table) };
    await keys.pick(patients.getByLabel('File: Patients from a table'), file);
    await keys.press(patients.getByRole('button', { name: 'Try it' }));
    await keys.press(patients.getByRole('button', { name: 'Take it in' }));
    await patients.getByText('Written.', { exact: true }).waitFor();

    await keys.press(page.getByRole('link', { name: 'Practice', exact: true }));
    await keys.press(link('People who sign in'));
    await keys.type(page.getByLabel('Sign-in name'), 'kay@example.test');
    await keys.type(page.getByLabel('Name', { exact: true }), 'Kay Key-Example');
    await keys.press(page.getByRole('checkbox', { name: 'North clinic' }), 'Space');
    await keys.press(button('Suggest one'));
    await keys.press(button('Give the account'));
    await said('kay@example.test signs in with the password');
    await keys.press(link('Kay Key-Example'));
    await keys.press(button('End the account'));
    await keys.press(button('Yes, do it'));
    await button('Let this person in again').waitFor();

    await keys.press(page.getByRole('link', { name: 'Practice', exact: true }));
    await keys.press(link('Audit trail'));
    await keys.type(page.getByLabel('Deed'), 'user-');
    await page.keyboard.press('Enter');
    await page.getByRole('group', { name: 'Who did what' }).getByRole('cell', { name: 'user ended' }).waitFor();
  });
});
