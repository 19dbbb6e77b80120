type Listener = (lost: boolean) => void;

const listeners = new Set<Listener>();
let signedIn = false;

/** Called once a session is known to be good; before that a 401 only means "nobody has signed in yet". */
export function sessionGood(): void {
  signedIn = true;
  for (const listener of listeners) listener(false);
}

/** Called when the server says that the session has ended. The screen stays mounted so that nothing typed is lost. */
export function sessionLost(): void {
  if (!signedIn) return;
  for (const listener of listeners) listener(true);
}

export function sessionEnded(): void {
  signedIn = false;
}

export function onSession(listener: Listener): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}
