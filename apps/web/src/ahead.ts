import type { PracticeView } from '@archwright/contracts';
import { practiceQuery, queryClient } from './api/queries.js';

/**
 * Asks for what a screen will show while its code is on its way and its frame is drawn. Nobody waits for it here: what
 * can't be had is asked for again, and said, by the screen.
 */
export function ahead(ask: (practice: PracticeView) => Promise<unknown>): void {
  void queryClient
    .query(practiceQuery)
    .then(ask)
    .catch(() => undefined);
}
