import type { DayBoard } from '@archwright/contracts';
import type { Browser } from 'playwright-core';
import { openSlowPage, stateOf } from './web-screen.js';

const VISITS = 500;
const STEPS = 40;

/**
 * Scrolls the desk's day with 500 visits; the service's answer is made that long on its way.
 *
 * @returns the longest task of the page's thread while it scrolls, in milliseconds; 0 when none reached 50
 */
export async function scrollLongDay(browser: Browser, url: string, on: string): Promise<number> {
  const page = await openSlowPage(browser, url, await stateOf(browser, url, 'front-desk'));
  try {
    await page.route(/\/api\/v1\/appointments\?/, async (route) => {
      const answer = await route.fetch();
      await route.fulfill({ response: answer, json: lengthened((await answer.json()) as DayBoard) });
    });
    await page.goto(`/desk?on=${on}`);
    await page.getByRole('heading', { level: 2 }).first().waitFor();
    await page.waitForLoadState('networkidle');
    await page.evaluate('seen.longest = 0');
    for (let step = 0; step < STEPS; step++) {
      await page.mouse.wheel(0, 600);
      await page.waitForTimeout(50);
    }
    return await page.evaluate<number>('seen.longest');
  } finally {
    await page.context().close();
  }
}

/** The same visits again and again, each time under other ids. */
function lengthened(board: DayBoard): DayBoard {
  const appointments = Array.from({ length: VISITS }, (_, index) => {
    const visit = board.appointments[index % board.appointments.length];
    if (visit === undefined) throw new Error('The day has no visit to repeat.');
    return { ...visit, id: `${visit.id.slice(0, -4)}${index.toString(16).padStart(4, '0')}` };
  });
  return { ...board, appointments };
}
