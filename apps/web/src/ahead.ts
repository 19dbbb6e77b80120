import type { PracticeView } from '@archwright/contracts';
import { practiceQuery, queryClient } from './api/queries.js';

/**
 * Asks for what a screen will show while its code is on its way and its frame is drawn. Nobody waits for it here: what
 * can't be had is asked for again, and said, by the screen.
 */
export function ahead(ask: () => Promise<unknown>): void {
  void ask().catch(() => undefined);
}

/** The same, where the practice says what is shown. */
export function aheadOf(ask: (practice: PracticeView) => Promise<unknown>): void {
  ahead(async () => ask(await queryClient.query(practiceQuery)));
}
