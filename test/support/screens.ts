import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { picturesOf } from './pictures.js';

/** Desk screen, tablet on its side, tablet upright; what the first and the last show, the middle one shows in some layout. */
const SIZES = [
  { width: 1440, height: 900, isBetween: false },
  { width: 1024, height: 768, isBetween: true },
  { width: 768, height: 1024, isBetween: false },
] as const;
const COLOURS = ['color-contrast', 'link-in-text-block'];
/** What the place of things decides, and not what they are. */
const LAYOUT = [...COLOURS, 'target-size', 'scrollable-region-focusable'];
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/**
 * Runs in the page: what stays at the edge of the window lies in its place for once. Beneath it there is always something
 * half covered, which is scrolled into sight and no fault of its size.
 */
const LAY_FLAT = `for (const element of document.querySelectorAll('main *'))
  if (getComputedStyle(element).position === 'sticky') {
    element.dataset.sticks = '';
    element.style.setProperty('position', 'static', 'important');
  }`;
const LET_STICK = `for (const element of document.querySelectorAll('[data-sticks]')) {
  delete element.dataset.sticks;
  element.style.removeProperty('position');
}`;

/**
 * What is wrong with the screen as it stands, at three sizes, each of which is kept as a picture (the first in dark too):
 * broken accessibility rules with the places that break them (in dark those of colour, at the middle size those of layout,
 * the rest being the same), and content that runs out of the window sideways.
 *
 * @returns one line each; empty for a good screen
 */
export async function faultsOfScreen(page: Page): Promise<string[]> {
  await page.waitForLoadState('networkidle');
  const before = page.viewportSize();
  const faults: string[] = [];
  const keep = picturesOf(page);
  for (const { width, height, isBetween } of SIZES) {
    await page.setViewportSize({ width, height });
    const where = `${String(width)}x${String(height)}`;
    await page.emulateMedia({ colorScheme: 'light' });
    await keep(`${where}-light`);
    await page.evaluate(LAY_FLAT);
    const light = await brokenRules(page, (axe) => (isBetween ? axe.withRules(LAYOUT) : axe.withTags(WCAG)));
    await page.evaluate(LET_STICK);
    faults.push(...light.map((fault) => `${where} light: ${fault}`));
    if (!isBetween) {
      await page.emulateMedia({ colorScheme: 'dark' });
      if (width === SIZES[0].width) await keep(`${where}-dark`);
      const dark = await brokenRules(page, (axe) => axe.withRules(COLOURS));
      faults.push(...dark.map((fault) => `${where} dark: ${fault}`));
    }
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
