import type { Page } from 'playwright-core';

/**
 * Takes a picture for the README as the screen stands, unretouched; only when asked for by `TEST_PICTURES=1`, since every
 * run would draw it a little differently.
 */
export async function takePicture(page: Page, name: string): Promise<void> {
  if (process.env.TEST_PICTURES !== '1') return;
  await page.waitForLoadState('networkidle');
  await page.screenshot({ path: `apps/web/pictures/${name}.png`, animations: 'disabled' });
}
