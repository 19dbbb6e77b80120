import { mkdirSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
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

/** Screens of this suite so far: each suite has its modules to itself. */
let screens = 0;

/**
 * Begins the pictures of one screen, whole and for looking at, in the suite's part of the folder that the test command
 * names; those of an earlier run go.
 *
 * @returns takes one picture, as the screen stands; `look` says how, such as `1440x900-dark`
 */
export function picturesOf(page: Page): (look: string) => Promise<void> {
  const suite = basename(expect.getState().testPath ?? 'suite', '.e2e-spec.ts');
  const folder = join(process.env.TEST_SCREENS ?? 'dist/screens', suite);
  if (screens === 0) rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  screens += 1;
  const name = `${String(screens).padStart(2, '0')}-${wordsOf(page.url())}`;
  return async (look) => {
    await page.screenshot({ path: join(folder, `${name}-${look}.png`), fullPage: true, animations: 'disabled' });
  };
}

/** The words of an address, without what it names by an id. */
function wordsOf(address: string): string {
  const words = new URL(address).pathname.split('/').filter((word) => /^[a-z-]+$/.test(word));
  return words.join('-') || 'start';
}
