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
});
