import type { Locator, Page } from 'playwright-core';

/** A hand at pointer and keyboard that counts what it does: each press of a button, each text, each choice. */
export class Hand {
  private done = 0;

  constructor(private readonly page: Page) {}

  get actions(): number {
    return this.done;
  }

  async click(target: Locator): Promise<void> {
    await target.click();
    this.done++;
  }

  async type(target: Locator, text: string): Promise<void> {
    await target.fill(text);
    this.done++;
  }

  async press(key: string): Promise<void> {
    await this.page.keyboard.press(key);
    this.done++;
  }

  /** Chooses the first option whose words fit. */
  async choose(target: Locator, words: RegExp): Promise<void> {
    await target.waitFor();
    const label = (await target.locator('option').allInnerTexts()).find((each) => words.test(each));
    if (label === undefined) throw new Error(`No option reads like ${String(words)}.`);
    await target.selectOption({ label });
    this.done++;
  }
}
