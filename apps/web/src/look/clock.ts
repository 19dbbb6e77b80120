import { useEffect, useState } from 'react';
import { serverMs } from '../api/server-clock.js';

/** The present instant by the service's clock, renewed every `everyMs`; the only place where a screen reads the clock. */
export function useNow(everyMs: number): number {
  const [now, setNow] = useState(() => serverMs(Date.now()));
  useEffect(() => {
    const timer = setInterval(() => {
      setNow(serverMs(Date.now()));
    }, everyMs);
    return () => {
      clearInterval(timer);
    };
  }, [everyMs]);
  return now;
}
