import { useDeferredValue, type ReactNode } from 'react';

/** Drawn once what stands above it is on screen: a long form below does not keep the top of its page waiting. */
export function AfterTop({ children }: { children: ReactNode }) {
  return useDeferredValue(true, false) ? children : null;
}
