import { setTimeout as pause } from 'node:timers/promises';
import { currentRequestId, withinRequest } from './request-scope.js';

describe('the request under way', () => {
  it('is told apart from others that run at the same time', async () => {
    const seen = await Promise.all(
      ['one', 'other'].map((id) =>
        withinRequest(id, async () => {
          await pause(1);
          return currentRequestId();
        }),
      ),
    );
    expect(seen).toEqual(['one', 'other']);
  });

  it('is none outside of a request', () => {
    withinRequest('one', () => undefined);
    expect(currentRequestId()).toBeNull();
  });
});
