const PREFIX = 'archwright.draft.';

type Store = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/**
 * Drafts survive a reload of their tab and nothing else: measurements of a patient are not left behind on a shared
 * machine. Where the browser keeps nothing, a draft lives as long as its screen.
 */
function tabStore(): Store | null {
  try {
    return window.sessionStorage;
  } catch {
    return null;
  }
}

export function keepDraft(key: string, draft: unknown, store = tabStore()): void {
  try {
    if (draft === null) store?.removeItem(PREFIX + key);
    else store?.setItem(PREFIX + key, JSON.stringify(draft));
  } catch {
    // A full or forbidden store costs the draft its life after a reload, not the work on screen.
  }
}

/** @param read takes what was kept, and refuses what an earlier version of the application kept by answering null */
export function keptDraft<Draft>(key: string, read: (kept: unknown) => Draft | null, store = tabStore()): Draft | null {
  const text = store?.getItem(PREFIX + key) ?? null;
  if (text === null) return null;
  try {
    return read(JSON.parse(text));
  } catch {
    return null;
  }
}

/** What was typed before it was known whom it is about goes on under their own key. */
export function moveDraft(from: string, to: string, store = tabStore()): void {
  const draft = keptDraft<unknown>(from, (kept) => kept, store);
  if (draft === null) return;
  keepDraft(to, draft, store);
  keepDraft(from, null, store);
}

/** Whether something typed waits there to be saved. */
export const isKept = (key: string, store = tabStore()): boolean =>
  keptDraft(key, (kept) => kept ?? null, store) !== null;

/** When somebody signs out, nothing typed stays for the next person at this machine. */
export function forgetDrafts(store = tabStore()): void {
  if (store === null) return;
  const keys = Array.from({ length: store.length }, (_, index) => store.key(index));
  for (const key of keys) if (key?.startsWith(PREFIX)) store.removeItem(key);
}
