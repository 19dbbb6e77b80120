import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { sessionQuery } from '../api/queries.js';
import { isAffected } from './affected.js';
import { LiveLine } from './live-line.js';
import { noteOthers } from './others-changes.js';

/**
 * Keeps what is on screen up to date while somebody looks at it. What is typed lives in the forms and is left alone.
 *
 * @param isSignedIn false while the session is over: then nobody may listen
 * @returns false when the line has been down for a while
 */
export function useLive(userId: string, isSignedIn: boolean): boolean {
  const client = useQueryClient();
  const [isUp, setUp] = useState(true);
  useEffect(() => {
    if (!isSignedIn) return undefined;
    const line = new LiveLine((address) => new EventSource(address), {
      onNews: (news) => {
        noteOthers(news, userId);
        void client.invalidateQueries({ predicate: (query) => isAffected(news, query) });
      },
      onState: setUp,
      // The stream can't tell why it was refused. Asking who is signed in can, and a 401 opens the sign-in.
      onBroken: () => void client.invalidateQueries({ queryKey: sessionQuery.queryKey }),
    });
    const look = (): void => {
      if (document.visibilityState === 'hidden') line.rest();
      else line.start();
    };
    // A line from before the network went away may look open for a long while.
    const anew = (): void => {
      line.rest();
      look();
    };
    look();
    document.addEventListener('visibilitychange', look);
    window.addEventListener('online', anew);
    return () => {
      document.removeEventListener('visibilitychange', look);
      window.removeEventListener('online', anew);
      line.rest();
    };
  }, [client, userId, isSignedIn]);
  return isUp;
}
