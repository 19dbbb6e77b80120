import { jest } from '@jest/globals';
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import type { Browser, Page } from 'playwright-core';
import { openBrowser } from '../support/browser.js';
import { faultsOfScreen } from '../support/screens.js';
import { until } from '../support/until.js';

jest.setTimeout(120_000);

describe('the page of the look, while it is being worked on', () => {
  let pages: ChildProcess;
  let address = '';
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    // Its bundler is native and does not load inside a test's own module system.
    const args = [
      'node_modules/vite/bin/vite.js',
      '--config',
      'apps/web/vite.config.ts',
      '--host',
      '127.0.0.1',
      '--port',
      '0',
    ];
    pages = spawn(process.execPath, args, {
      env: { ...process.env, NO_COLOR: '1' },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    let said = '';
    pages.stdout?.on('data', (text: Buffer) => {
      said += text.toString();
    });
    browser = await openBrowser();
    page = await (await browser.newContext({ reducedMotion: 'reduce' })).newPage();
    await until(() => /http:\S+\//.test(said));
    address = /http:\S+\//.exec(said)?.[0] ?? '';
  });
  afterAll(async () => {
    await browser.close();
    const ended = once(pages, 'exit');
    pages.kill();
    await ended;
  });

  it.each([
    ['en', 'ltr'],
    ['de', 'ltr'],
    ['ar', 'rtl'],
  ])('shows every part in %s so that everybody can use it', async (language, direction) => {
    await page.goto(`${address}style`);
    await page.getByRole('heading', { level: 1, name: 'Style' }).waitFor();
    await page.getByRole('combobox').first().selectOption(language);
    await page.locator(`html[lang="${language}"][dir="${direction}"]`).waitFor();
    await page.getByRole('heading', { level: 1, name: 'Style' }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  describe('a field for a date', () => {
    beforeEach(async () => {
      await page.goto(`${address}style`);
      await page.getByRole('heading', { level: 1, name: 'Style' }).waitFor();
    });
    const speak = async (language: string): Promise<void> => {
      await page.getByRole('combobox').first().selectOption(language);
      await page.locator(`html[lang="${language}"]`).waitFor();
      await page.getByRole('heading', { level: 1, name: 'Style' }).waitFor();
    };
    const field = (label: string) => page.getByLabel(label, { exact: true });
    const opener = (label: string) =>
      page.locator('.mantine-InputWrapper-root', { has: field(label) }).locator('button');
    const focused = () => page.locator(':focus').getAttribute('aria-label');

    it('shows what was typed with weekday and month, and keeps what is no date with what would be one', async () => {
      await speak('en');
      await field('A date').fill('4/1/2027');
      await field('A date').blur();
      expect(await field('A date').inputValue()).toBe('Mon 4 Jan 2027');
      await field('A date').fill('next week');
      await field('A date').blur();
      expect(await field('A date').inputValue()).toBe('next week');
      expect(await field('A date').getAttribute('aria-invalid')).toBe('true');
      await page.getByText('Not a date of the calendar.').waitFor();
      await field('A date').fill('2027-01-05');
      await field('A date').blur();
      expect(await field('A date').inputValue()).toBe('Tue 5 Jan 2027');
      expect(await page.getByText('Not a date of the calendar.').count()).toBe(0);
    });

    it('is chosen in the calendar by keyboard alone, which gives the focus back', async () => {
      await speak('en');
      await field('A date').focus();
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      await page.getByRole('dialog', { name: 'Calendar' }).waitFor();
      await until(async () => (await focused()) === 'Thursday 28 January 2027');
      await page.keyboard.press('Escape');
      await until(async () => (await page.getByRole('dialog').count()) === 0);
      expect(await focused()).toBe('Calendar');
      await page.keyboard.press('Enter');
      await until(async () => (await focused()) === 'Thursday 28 January 2027');
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('Enter');
      await until(async () => (await page.getByRole('dialog').count()) === 0);
      expect([await focused(), await field('A date').inputValue()]).toEqual(['Calendar', 'Fri 29 Jan 2027']);
    });

    it('begins a birth date with years', async () => {
      await speak('en');
      await opener('A birth date').click();
      await page.getByRole('button', { name: '1957' }).click();
      await page.getByRole('button', { name: 'Mar', exact: true }).click();
      await page.getByRole('button', { name: 'Monday 4 March 1957' }).click();
      expect(await field('A birth date').inputValue()).toBe('4 Mar 1957');
    });

    it.each([
      ['en', 'light', 'Mo'],
      ['de', 'dark', 'Mo'],
      ['ar', 'light', 'س'],
      ['ar', 'dark', 'س'],
    ] as const)('has a calendar that everybody can use in %s, %s', async (language, colorScheme, first) => {
      await page.emulateMedia({ colorScheme });
      await speak(language);
      await opener('A date').click();
      const calendar = page.getByRole('dialog');
      await calendar.waitFor();
      expect(await calendar.locator('th').first().textContent()).toBe(first);
      for (const button of await calendar.locator('button:visible').all()) {
        const { width, height } = (await button.boundingBox()) ?? { width: 0, height: 0 };
        expect(Math.min(width, height)).toBeGreaterThanOrEqual(44);
      }
      expect(await faultsOfScreen(page)).toEqual([]);
      await page.screenshot({ path: `dist/screens/style-calendar-${language}-${colorScheme}.png` });
    });
  });
});
