import type { Locator } from 'playwright-core';

const GIVE_UP_AFTER_MS = 15_000;

/** Waits until so many elements match: what a screen shows may come a moment after its heading. */
export async function comesTo(target: Locator, count: number): Promise<void> {
  const endMs = performance.now() + GIVE_UP_AFTER_MS;
  for (;;) {
    const now = await target.count();
    if (now === count) return;
    if (performance.now() > endMs) throw new Error(`${String(target)}: ${String(now)}, not ${String(count)}.`);
    await target.page().waitForTimeout(25);
  }
}
