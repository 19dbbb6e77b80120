import type { GuideStep } from '../words/guide.js';

/**
 * The step that a newcomer stands at: the one that begins at this page, unless a later one was reached already. Pages
 * off the way change nothing.
 *
 * @param reached index of the step reached before
 */
export function stepAt(steps: readonly GuideStep[], pathname: string, reached: number): number {
  const here = steps.findIndex(({ at }) => at.test(pathname));
  return Math.max(reached, here <= reached + 1 ? here : reached);
}
