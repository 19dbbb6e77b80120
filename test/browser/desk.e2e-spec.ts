import { jest } from '@jest/globals';
import { demoClock } from '@archwright/contracts';
import type { Browser, Page } from 'playwright-core';
import { openBrowser, signIn, type Person } from '../support/browser.js';
import { comesTo } from '../support/comes-to.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { Hand } from '../support/hand.js';
import { Keys } from '../support/keys.js';
import { takePicture } from '../support/pictures.js';
import { bookCase, enterPatient, openCase } from '../support/prepared-cases.js';
import { faultsOfScreen } from '../support/screens.js';
import { callService } from '../support/service-call.js';

/** Screens are looked at in three sizes and two colours; each offer is an exact search over four months. */
jest.setTimeout(180_000);

/** Of somebody who does it every day, signed in already. */
const MOST_ACTIONS = 8;

let service: DemoService;
let browser: Browser;
let desk: Person;
let page: Page;
beforeAll(async () => {
  [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
  desk = await signIn(browser, service.url, 'front-desk');
  page = desk.page;
});
afterEach(() => {
  expect(desk.complaints.take()).toEqual([]);
});
afterAll(async () => {
  await browser.close();
  await service.stop();
});

const button = (name: string | RegExp) => page.getByRole('button', { name });
const link = (name: string | RegExp) => page.getByRole('link', { name });
const heading = (name: string | RegExp) => page.getByRole('heading', { name });
const onCase = /\/desk\/cases\/[^/]+$/;

describe('a patient calls', () => {
  it('and has seven visits booked after at most eight actions', async () => {
    const hand = new Hand(page);
    await hand.press('/');
    await hand.type(page.getByRole('searchbox'), 'alma');
    await hand.press('Enter');
    await hand.click(link('Open a case for Alma Example'));
    await hand.choose(page.getByLabel('Upper arch'), /conventional/);
    await hand.click(button('Open and find times'));
    const wished = page.getByRole('article').filter({ hasText: 'Every visit as wished' });
    await wished.waitFor();
    await takePicture(page, 'desk');
    expect(await faultsOfScreen(page)).toEqual([]);
    await hand.click(wished.getByRole('button', { name: 'Hold while on the phone' }));
    await page.getByText(/held, 1[45]:\d\d left/).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await hand.click(button('Confirm all visits'));
    await page.waitForURL(onCase);
    expect(await page.getByText(/^Next: Examination/).innerText()).toMatch(/Placement on \w+ \d+ \w+ 2027\.$/);
    await comesTo(link(/^Move or cancel: /), 7);
    await comesTo(link(/times$/), 0);
    expect(hand.actions).toBeLessThanOrEqual(MOST_ACTIONS);
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('and takes the visits home on paper, in a calendar or by mail', async () => {
    await link('Visits to hand over').click();
    await link('Calendar file').waitFor();
    await page.getByRole('row', { name: /Placement/ }).waitFor();
    await comesTo(page.getByRole('row'), 8);
    const download = page.waitForEvent('download');
    await link('Calendar file').click();
    expect((await download).suggestedFilename()).toBe('visits.ics');
    await button('Mail it again').click();
    await page.getByText('The mail goes out within seconds.').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('and the same is done by keyboard alone, with the later visits kept provisionally', async () => {
    await page.goto('/desk');
    await heading(/January/).waitFor();
    await page.keyboard.press('/');
    await page.keyboard.type('sampleson');
    await page.keyboard.press('Enter');
    const keys = new Keys(page);
    await keys.press(link('Sampleson, Bertil'));
    await keys.press(link('Open a case for this patient'));
    for (const arch of ['Upper arch', 'Lower arch'])
      await keys.choose(page.getByLabel(arch), 'Complete denture, digital');
    await keys.press(button('Open and find times'));
    await keys.press(button('Hold while on the phone').first());
    await keys.press(page.getByLabel('or confirm the next'), 'ArrowDown');
    await keys.press(button('Confirm these, rest provisional'));
    await page.waitForURL(onCase);
    await page.getByText('planned, provisional').nth(2).waitFor();
    await page.getByText(/held, 4[78] h/).waitFor();
  });

  it('and is new: an enquiry books the examination alone, and the case opens when the treatment is decided', async () => {
    await page.goto('/desk');
    await link('Enquiry').click();
    await page.getByLabel('Family name or given name').fill('Alma');
    await button(/^Alma Example/).waitFor();
    await page.getByLabel('Family name or given name').fill('Firstcall');
    await link('Add a patient').last().click();
    expect(await page.getByLabel('Family name').inputValue()).toBe('Firstcall');
    // A second Alma of the same birth date is pointed out while she is typed.
    await page.getByLabel('Given name').fill('Alma');
    await page.getByLabel('Family name').fill('Exam');
    await page.getByLabel('Date of birth').fill('1949-03-04');
    await link('Example, Alma, born 4 Mar 1949').waitFor();
    await page.getByLabel('Given name').fill('Fay');
    await page.getByLabel('Family name').fill('Firstcall');
    await page.getByText('Already here, perhaps?').waitFor({ state: 'hidden' });
    await page.reload();
    expect(await page.getByLabel('Given name').inputValue()).toBe('Fay');
    expect(await faultsOfScreen(page)).toEqual([]);
    await button('Add patient').click();
    await button('Find times for the examination').click();
    await button('Hold while on the phone').first().click();
    await button('Confirm all visits').click();
    await page.waitForURL(onCase);
    await heading('Open the case').waitFor();
    await comesTo(link(/^Move or cancel: /), 1);
    expect(await faultsOfScreen(page)).toEqual([]);
    const chosen = page.getByLabel('Upper arch').locator('option:checked');
    expect(await chosen.innerText()).toMatch(/conventional/);
    await button('Open and find times').click();
    await button('Hold while on the phone').first().waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('and is found by either name, the birth date or the case number; nobody is a helpful answer too', async () => {
    const search = async (typed: string) => {
      await page.getByRole('searchbox').fill(typed);
      await page.keyboard.press('Enter');
      await heading(`Find`).waitFor();
    };
    for (const typed of ['Example', 'alma', 'alma exa', '4 Mar 1949', '04/03/1949']) {
      await search(typed);
      await link('Example, Alma').waitFor();
      await page.getByText(`“${typed}”`).waitFor();
    }
    await search('27-0001');
    await link('27-0001').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await search('no such name');
    await page.getByText('Nobody and nothing fits “no such name”').waitFor();
    await link('Add a new patient').click();
    await heading('Add a patient').waitFor();
  });

  it('and is entered; what was typed wrong is said beside its field and nothing is lost', async () => {
    await page.goto('/desk/patients/new');
    await page.getByLabel('Given name').fill('Ingvar');
    await page.getByLabel('Mail address').fill('not an address');
    await page.getByLabel('Telephone', { exact: true }).fill('four');
    await page.getByLabel('Longest time in the chair').fill('9');
    await button('Add patient').click();
    for (const accepted of [
      'Enter a family name of up to 100 letters.',
      'Enter a full date of birth.',
      'Enter an address such as name@example.org, or leave it empty.',
      'Enter a telephone number such as +44 20 7946 0000, or leave it empty.',
      'Enter whole minutes from 15 to 480, or leave it empty.',
    ])
      await page.getByText(accepted).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    expect(await page.getByLabel('Given name').inputValue()).toBe('Ingvar');
    await page.getByLabel('Family name').fill('Newcomer');
    await page.getByLabel('Date of birth').fill('1946-05-06');
    await page.getByLabel('Mail address').fill('');
    await page.getByLabel('Telephone', { exact: true }).fill('+44 20 7946 0011');
    await page.getByLabel('Longest time in the chair').fill('90');
    await button('Add patient').click();
    await heading('Ingvar Newcomer').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('and what was typed for one patient never comes up for another', async () => {
    const [una, dua] = [
      await enterPatient(page, { familyName: 'Una-Draft' }),
      await enterPatient(page, { familyName: 'Dua-Draft' }),
    ];
    const place = page.getByLabel('Visits take place');
    const openFor = async (patientId: string): Promise<void> => {
      await page.goto(`/desk/cases/new?patient=${patientId}`);
      await page.getByText('-Draft', { exact: false }).first().waitFor();
    };
    await openFor(una);
    await place.selectOption('home');
    await openFor(dua);
    expect(await place.inputValue()).toBe('clinic');
    await openFor(una);
    expect(await place.inputValue()).toBe('home');

    await page.goto('/desk/cases/new');
    await place.selectOption('care-home');
    await page.getByLabel('Family name or given name').fill('Dua-Draft');
    await button(/Dua-Draft/).click();
    expect(await place.inputValue()).toBe('care-home');
    await button('Choose someone else').click();
    expect(await place.inputValue()).toBe('clinic');

    await page.goto('/desk/patients/new?name=Una');
    await page.getByLabel('Given name').fill('Typed');
    await page.goto('/desk/patients/new?name=Dua');
    expect(await page.getByLabel('Given name').inputValue()).toBe('');
  });

  it('and hears why nothing fits, and what would have to give', async () => {
    const days = Array.from({ length: 200 }, (_, day) => new Date(Date.UTC(2027, 0, 5 + day)));
    const unavailableOn = days.map((day) => day.toISOString().slice(0, 10));
    const wishes = { weekdays: [], from: null, to: null, unavailableOn };
    const { id } = await openCase(page, await enterPatient(page, { familyName: 'Faraway', wishes }));
    await page.goto(`/desk/cases/${id}/offers`);
    await heading('Why it does not fit').waitFor();
    await page.getByText(/has no time left within the waits/).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await button('Come on days that were given as impossible.').click();
    await page.getByText('One condition is loosened for this search.').waitFor();
    await button('Hold while on the phone').first().waitFor();
    await button('Search as first asked').click();
    await heading('Why it does not fit').waitFor();
  });
});

describe('a patient cannot come', () => {
  it('and sees what moves with the visit before it moves', async () => {
    const { id } = await bookCase(page, await enterPatient(page, { familyName: 'Mover', phone: '+44 20 7946 0012' }));
    await page.goto(`/desk/cases/${id}`);
    await link(/^Move or cancel: Border molding/).click();
    await page.getByLabel('Times that leave every other visit where it is').selectOption('other');
    await button('Show what would change').click();
    await page.getByText('Enter a day and a time in steps of 5 minutes, such as 09:20.').waitFor();
    desk.complaints.expect(422, /\/ripples\/move$/);
    await page.getByLabel('Day', { exact: true }).fill('2027-01-16');
    await page.getByLabel('Time, in steps of 5 minutes').fill('09:00');
    await button('Show what would change').click();
    await page.getByText('The visit cannot start then').waitFor();
    await page.getByLabel('Day', { exact: true }).fill('2027-01-14');
    await page.getByLabel('Time, in steps of 5 minutes').fill('09:00');
    await button('Show what would change').click();
    await heading('What would change').waitFor();
    await page.getByText(/^\d visits change, \d+ laboratory steps change/).waitFor();
    await page.getByText(/Mover, \+44 20 7946 0012: tell the patient/).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByLabel('Reason').fill('A wedding');
    await comesTo(heading('What would change'), 0);
    await button('Show what would change').click();
    await button('Change it').click();
    await page.waitForURL(onCase);
    await page.getByRole('row', { name: /Border molding.*Thu 14 Jan, 09:00/ }).waitFor();
    await link('See who gains most by it').click();
    await heading('Freed time').waitFor();
    await page.getByText(/\d cases? (was|were) looked at/).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('and is called: the list keeps each attempt until somebody was reached', async () => {
    await link('Desk').click();
    await page.getByRole('navigation', { name: 'Desk' }).getByRole('link', { name: 'Calls to make' }).click();
    const call = page.getByRole('listitem').filter({ hasText: /Mover.*visits of case \S+ have new times/s });
    // One card: waiting for a locator refuses several.
    await call.waitFor();
    await call.getByRole('button', { name: 'No answer' }).click();
    await call.getByText(/no answer \(Robin Desk-Example\)/).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await call.getByRole('button', { name: 'Reached' }).click();
    await call.getByText(/^done/).waitFor();
  });

  it('and is left alone until they can come again when a visit is cancelled', async () => {
    const { id } = await bookCase(page, await enterPatient(page, { familyName: 'Poorly' }));
    await page.goto(`/desk/cases/${id}`);
    await link(/^Move or cancel: Border molding/).click();
    await page.getByRole('radio', { name: 'Cancel' }).check();
    await button('Show what would change').click();
    await page.getByText('Give a reason of up to 500 characters.').waitFor();
    await page.getByLabel('Reason').fill('The patient is ill');
    await page.getByLabel('Can come again from').fill('2027-01-25');
    await button('Show what would change').click();
    await heading('What would change').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await button('Change it').click();
    await page.waitForURL(onCase);
    await page.getByRole('row', { name: /Border molding.*(2[5-9] Jan|Feb)/ }).waitFor();
    await page.getByRole('row', { name: /Examination.*Jan/ }).waitFor();
  });

  it('and the case is paused, with all that follows shown before, and goes on', async () => {
    await page.getByLabel('What to do').selectOption('paused');
    await page.getByText(/All future visits are cancelled/).waitFor();
    await button('Pause the case').click();
    await page.getByText('Give a reason of up to 500 characters.').waitFor();
    await page.getByLabel('Reason').fill('A stay in hospital');
    await page.getByLabel('Look again on').fill('2027-02-15');
    await button('Pause the case').click();
    await page.getByText('Paused: A stay in hospital. To be looked at again on Monday 15 February 2027.').waitFor();
    await comesTo(link(/times$/), 0);
    expect(await faultsOfScreen(page)).toEqual([]);
    await page.getByLabel('What to do').selectOption('open');
    await page.getByLabel('Reason').fill('Back at home');
    await button('Go on with the case').click();
    await link('Find times').waitFor();
  });
});

describe('two desks', () => {
  it('cannot hold the same time: the later one gets fresh offers', async () => {
    const [one, two] = [
      await openCase(page, await enterPatient(page, { familyName: 'First' })),
      await openCase(page, await enterPatient(page, { familyName: 'Second' })),
    ];
    const other = await signIn(browser, service.url, 'front-desk');
    await page.goto(`/desk/cases/${one.id}/offers`);
    await other.page.goto(`/desk/cases/${two.id}/offers`);
    const hold = (of: Page) => of.getByRole('button', { name: 'Hold while on the phone' }).first();
    await hold(other.page).waitFor();
    await hold(page).click();
    await page.getByText(/held, /).waitFor();
    other.complaints.expect(409, /\/holds$/);
    await hold(other.page).click();
    await other.page.getByText('Someone else took one of these times a moment ago. These are fresh offers.').waitFor();
    await hold(other.page).click();
    await other.page.getByText(/held, /).waitFor();
    expect(other.complaints.take()).toEqual([]);
    await other.leave();
    await button('Let it go').click();
    await hold(page).waitFor();
  });
});

describe('the day', () => {
  it('checks in who comes; who did not can be marked after the start only, is called, and is planned anew', async () => {
    const [comes, stays] = [
      await bookCase(page, await enterPatient(page, { familyName: 'Comer' })),
      await bookCase(page, await enterPatient(page, { familyName: 'Stayaway' })),
    ];
    const startOf = ({ stages }: typeof comes) => stages[0]?.startsAt ?? '';
    const dayOf = (view: typeof comes) => page.goto(`/desk?on=${startOf(view).slice(0, 10)}`);
    await dayOf(comes);
    await button('Arrived: Test Comer').click();
    await page.getByRole('row', { name: /Comer.*arrived/ }).waitFor();
    await button('Not here yet: Test Comer').click();
    await button('Arrived: Test Comer').click();
    await page.getByRole('row', { name: /Comer.*arrived/ }).waitFor();
    await dayOf(stays);
    await button('Arrived: Test Stayaway').waitFor();
    expect(await button('Missed: Test Stayaway').count()).toBe(0);
    await page.getByLabel('The day by').selectOption('chair');
    await heading(/clinic, Chair \d/i)
      .first()
      .waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);

    const late = new Date(Date.parse(startOf(stays)) + 10 * 60_000).toISOString();
    await callService(page, 'PUT /demo/clock', { answer: demoClock, body: { now: late } });
    // The session may have run out by then; whoever comes back signs in.
    expect(desk.complaints.take()).toEqual([]);
    await desk.leave();
    desk = await signIn(browser, service.url, 'front-desk');
    page = desk.page;
    await dayOf(stays);
    await page.getByRole('row', { name: /Stayaway.*10 min late/ }).waitFor();
    await button('Missed: Test Stayaway').click();
    await link('Plan anew: Test Stayaway').waitFor();
    await link('Plan anew: Test Stayaway').click();
    await heading(/^Plan anew: Examination/).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await button('Show what would change').click();
    await button('Change it').click();
    await page.waitForURL(onCase);
    await page.getByText(/^Next: Examination/).waitFor();
    await page.goto('/desk/calls');
    await page
      .getByRole('listitem')
      .filter({ hasText: /Stayaway.*Missed the visit/s })
      .waitFor();
  });

  it('shows the mail that the demonstration caught', async () => {
    await link('Caught mail').click();
    await page.getByText('to alma@example.test').first().click();
    await page
      .getByText(/you have 7 appointments/)
      .first()
      .waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });
});
