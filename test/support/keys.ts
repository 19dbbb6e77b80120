import type { Locator, Page } from 'playwright-core';

const MOST_TABS = 250;

/** Runs in the page with the element that has the focus: what a person who follows the focus would miss, or nothing. */
const UNSEEN = `(element) => {
  const shown = [element, ...(element.labels ?? [])];
  const parts = shown.map((each) => each.getBoundingClientRect()).filter(({ width, height }) => width > 1 && height > 1);
  const places = parts.flatMap(({ left, top, width, height }) =>
    [0.1, 0.5, 0.9].flatMap((x) => [0.1, 0.5, 0.9].map((y) => [left + x * width, top + y * height])));
  const isSeen = places.some(([x, y]) => {
    const there = document.elementFromPoint(x, y);
    return there !== null && shown.some((each) => each.contains(there) || there.contains(each) && there !== document.body);
  });
  if (!isSeen) return 'is covered or out of sight';
  const marks = [element, ...parts.length ? [element.parentElement] : []].map((each) => getComputedStyle(each));
  const isMarked = marks.some(({ outlineStyle, outlineWidth, boxShadow }) =>
    outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2 || boxShadow !== 'none');
  return isMarked || element.matches('input, select, textarea') ? null : 'does not show that it has the focus';
}`;

/** Somebody who works with the keyboard alone: everything is reached by Tab, and has to be seen once it is. */
export class Keys {
  constructor(private readonly page: Page) {}

  /** Goes on by Tab to the element, or back by Shift and Tab where that is the way. */
  async reach(target: Locator): Promise<void> {
    await target.waitFor();
    const focused = target.and(this.page.locator(':focus'));
    const isBehind = (await target.and(this.page.locator(':focus >> xpath=preceding::*')).count()) > 0;
    const key = isBehind ? 'Shift+Tab' : 'Tab';
    for (let tabs = 0; (await focused.count()) === 0; tabs++) {
      if (tabs === MOST_TABS) throw new Error(`${String(MOST_TABS)} presses of ${key} don't reach ${String(target)}.`);
      await this.page.keyboard.press(key);
    }
    const fault = await this.page.evaluate<string | null>(`(${UNSEEN})(document.activeElement)`);
    if (fault !== null) throw new Error(`${String(target)} has the focus and ${fault}.`);
  }

  async press(target: Locator, key = 'Enter'): Promise<void> {
    await this.reach(target);
    await this.page.keyboard.press(key);
  }

  /** In place of what a box holds. */
  async type(target: Locator, text: string): Promise<void> {
    await this.reach(target);
    await this.page.keyboard.press('Control+A');
    await this.page.keyboard.type(text);
  }

  /** A time of day such as 14:05, in the order of the browser's own language, American English, which is not the page's. */
  async typeTime(target: Locator, time: string): Promise<void> {
    const [hour = 0, minute = 0] = time.split(':').map(Number);
    const parts = [hour % 12 || 12, minute].map((part) => String(part).padStart(2, '0')).join('');
    const keys = `${parts}${hour < 12 ? 'A' : 'P'}`;
    await this.reach(target);
    await this.page.keyboard.type(keys);
    const typed = await target.inputValue();
    if (typed !== time) throw new Error(`Typing ${keys} makes it ${typed}.`);
  }

  /** The option of a list whose words begin so, found by typing them. */
  async choose(target: Locator, words: string): Promise<void> {
    await target.locator('option').filter({ hasText: words }).first().waitFor({ state: 'attached' });
    await this.reach(target);
    await this.page.keyboard.type(words);
    const chosen = await this.page.evaluate<string>('document.activeElement.selectedOptions[0].text');
    if (!chosen.startsWith(words)) throw new Error(`Typing "${words}" chooses "${chosen}".`);
  }

  /** The file that a person picks in the window that the browser opens. */
  async pick(target: Locator, file: { name: string; mimeType: string; buffer: Buffer }): Promise<void> {
    const asked = this.page.waitForEvent('filechooser');
    await this.press(target);
    await (await asked).setFiles(file);
  }
}
