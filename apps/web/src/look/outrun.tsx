import { hasStatus } from '../api/errors.js';
import { decisionWords as words } from '../words/frame.js';
import { Notice } from './notice.js';

/** Whether somebody else was faster: the row was changed, or is in a state that the call does not fit. */
export const isOutrun = (error: unknown): boolean => hasStatus(error, 412) || hasStatus(error, 409);

/** Says that somebody else was faster, and in the server's words what the row has become. */
export function Outrun({ error }: { error: unknown }) {
  if (hasStatus(error, 409)) {
    return (
      <Notice tone="caution">
        {error.message} {words.newest}
      </Notice>
    );
  }
  return hasStatus(error, 412) ? (
    <Notice tone="caution">
      {words.outrun} {words.newest}
    </Notice>
  ) : null;
}
