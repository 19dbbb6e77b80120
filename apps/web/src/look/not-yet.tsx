import { Refusal } from './notice.js';
import { FirstWait } from './screen.js';

interface Props {
  /** A question whose answer is not there yet, or was refused. */
  asked: { readonly error: Error | null; readonly refetch: () => Promise<unknown> };
  what: string;
}

/** In place of a screen that has nothing to draw yet: that it is on its way, or why it can't be had and how to ask again. */
export function NotYet({ asked, what }: Props) {
  return asked.error ? <Refusal error={asked.error} onRetry={() => void asked.refetch()} /> : <FirstWait what={what} />;
}
