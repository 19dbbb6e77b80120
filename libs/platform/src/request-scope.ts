import { AsyncLocalStorage } from 'node:async_hooks';

/** The request whose work is under way, so that what it writes can name it without every function passing it on. */
const scope = new AsyncLocalStorage<string>();

/** Does `work`, and all that it awaits, as part of a request. */
export function withinRequest<Result>(requestId: string, work: () => Result): Result {
  return scope.run(requestId, work);
}

/** Id of the request under way; null when the service acts by itself, as a sweep does. */
export function currentRequestId(): string | null {
  return scope.getStore() ?? null;
}
