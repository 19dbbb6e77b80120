import { jest } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { createServer, type ViteDevServer } from 'vite';
import { openBrowser } from '../support/browser.js';
import { faultsOfScreen } from '../support/screens.js';

jest.setTimeout(120_000);

describe('the page of the look, while it is being worked on', () => {
  let pages: ViteDevServer;
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    [pages, browser] = await Promise.all([
      createServer({ configFile: 'apps/web/vite.config.ts', logLevel: 'error', server: { port: 0, ws: false } }),
      openBrowser(),
    ]);
    await pages.listen();
    page = await browser.newPage();
  });
  afterAll(async () => {
    await browser.close();
    await pages.close();
  });

  it.each([
    ['en', 'ltr'],
    ['de', 'ltr'],
    ['ar', 'rtl'],
  ])('shows every part in %s so that everybody can use it', async (language, direction) => {
    await page.goto(`${pages.resolvedUrls?.local[0] ?? ''}style`);
    await page.getByRole('heading', { level: 1, name: 'Style' }).waitFor();
    await page.getByRole('combobox').first().selectOption(language);
    await page.locator(`html[lang="${language}"][dir="${direction}"]`).waitFor();
    await page.getByRole('heading', { level: 1, name: 'Style' }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });
});
