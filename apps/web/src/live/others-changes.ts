import type { ChangeNews } from '@archwright/contracts';
import { useSyncExternalStore } from 'react';

/** How often each record was changed by somebody else since this page was loaded. */
const counts = new Map<string, number>();
const listeners = new Set<() => void>();

const keyOf = (kind: string, id: string): string => `${kind} ${id}`;

/** @param ownId the person at this screen, whose own changes surprise nobody */
export function noteOthers({ changes }: ChangeNews, ownId: string): void {
  for (const { kind, id, actorId } of changes) {
    if (id === null || actorId === null || actorId === ownId) continue;
    counts.set(keyOf(kind, id), (counts.get(keyOf(kind, id)) ?? 0) + 1);
  }
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}

/** Grows whenever another person changes the record. */
export const useOthersChanges = (kind: string, id: string): number =>
  useSyncExternalStore(subscribe, () => counts.get(keyOf(kind, id)) ?? 0);
