import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** Desk screen, tablet on its side, tablet upright. */
const SIZES = [
  { width: 1280, height: 800 },
  { width: 1024, height: 768 },
  { width: 768, height: 1024 },
] as const;
const COLOURS = ['color-contrast', 'link-in-text-block'];
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/**
 * What is wrong with the screen as it stands, at three sizes: broken accessibility rules with the places that break them
 * (in dark those of colour, the rest being the same), and content that runs out of the window sideways.
 *
 * @returns one line each; empty for a good screen
 */
export async function faultsOfScreen(page: Page): Promise<string[]> {
  await page.waitForLoadState('networkidle');
  const before = page.viewportSize();
  const faults: string[] = [];
  for (const size of SIZES) {
    await page.setViewportSize(size);
    const where = `${String(size.width)}x${String(size.height)}`;
    await page.emulateMedia({ colorScheme: 'light' });
    faults.push(...(await brokenRules(page, (axe) => axe.withTags(WCAG))).map((fault) => `${where} light: ${fault}`));
    await page.emulateMedia({ colorScheme: 'dark' });
    faults.push(
      ...(await brokenRules(page, (axe) => axe.withRules(COLOURS))).map((fault) => `${where} dark: ${fault}`),
    );
    const excess = await page.evaluate<number>(
      'document.documentElement.scrollWidth - document.documentElement.clientWidth',
    );
    if (excess > 0) faults.push(`${where}: runs ${String(excess)} px out of the window`);
  }
  await page.emulateMedia({ colorScheme: null });
  if (before !== null) await page.setViewportSize(before);
  return faults;
}

async function brokenRules(page: Page, chosen: (axe: AxeBuilder) => AxeBuilder): Promise<string[]> {
  const { violations } = await chosen(new AxeBuilder({ page })).analyze();
  return violations.map(({ id, nodes }) => `${id} at ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
}
