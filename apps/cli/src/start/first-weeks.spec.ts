import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SharedClock } from '@archwright/platform';
import { OwedWeeks, playOwedWeeks, type FirstWeeks } from './first-weeks.js';
import { StoppedError } from './undo-list.js';

const HOUR_MS = 3_600_000;

describe('first weeks that are owed', () => {
  const until = new Date();
  const from = new Date(until.getTime() - 14 * 24 * HOUR_MS);
  let folder: string;
  let said: string[];
  let played: FirstWeeks[];
  let stopping: AbortController;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'first-weeks-'));
    [said, played, stopping] = [[], [], new AbortController()];
    new OwedWeeks(join(folder, 'first-weeks')).owe(from);
    new SharedClock(join(folder, 'clock'), from.toISOString());
  });
  afterEach(() => {
    rmSync(folder, { recursive: true });
  });

  const start = (play: () => Promise<void>) =>
    playOwedWeeks({
      owed: new OwedWeeks(join(folder, 'first-weeks')),
      clockFile: join(folder, 'clock'),
      now: () => until,
      play: (weeks) => {
        played.push(weeks);
        return play();
      },
      signal: stopping.signal,
      say: (line) => said.push(line),
    });
  const owedFrom = () => new OwedWeeks(join(folder, 'first-weeks')).from();
  const clockIsBehindMs = () => until.getTime() - new SharedClock(join(folder, 'clock')).nowMs();

  it('are played once, from their beginning', async () => {
    await start(() => Promise.resolve());
    expect(owedFrom()).toBeNull();
    await start(() => Promise.resolve());
    expect(played).toEqual([{ from, until, signal: stopping.signal }]);
  });

  it('stay owed from the same beginning when a case strays, and the clock shows the present meanwhile', async () => {
    await start(() => Promise.reject(new Error('Sampleson: no offer')));
    expect(said.slice(1)).toEqual([
      'Some of them are not where they should be: Sampleson: no offer',
      'The next start goes on with them.',
    ]);
    expect(clockIsBehindMs()).toBeLessThanOrEqual(0);
    await start(() => Promise.resolve());
    expect(played.map((weeks) => weeks.from)).toEqual([from, from]);
    expect(owedFrom()).toBeNull();
  });

  it('stay owed without a word of failure when a stop is asked for, and the clock stays in the past', async () => {
    const stopped = start(() => {
      stopping.abort();
      return Promise.reject(new Error('fetch failed'));
    });
    await expect(stopped).rejects.toThrow(StoppedError);
    expect(said).toHaveLength(1);
    expect(clockIsBehindMs()).toBeGreaterThan(13 * 24 * HOUR_MS);
    expect(owedFrom()).toEqual(from);
  });
});
