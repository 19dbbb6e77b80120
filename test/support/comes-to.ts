import type { Locator } from 'playwright-core';
import { until } from './until.js';

/** Waits until so many elements match: what a screen shows may come a moment after its heading. */
export async function comesTo(target: Locator, count: number): Promise<void> {
  let last: number | undefined;
  const hasCome = async (): Promise<boolean> => {
    last = await target.count();
    return last === count;
  };
  await until(hasCome).catch((cause: unknown) => {
    throw new Error(`${String(target)}: ${String(last)}, not ${String(count)}.`, { cause });
  });
}
