import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { SharedClock } from './clock.js';

describe('a clock that processes share', () => {
  let folder: string;
  let path: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'archwright-clock-'));
    path = join(folder, 'clock');
  });
  afterEach(() => {
    rmSync(folder, { recursive: true });
  });

  it("is the machine's clock as long as nobody moves it", () => {
    expect(Math.abs(new SharedClock(path).nowMs() - Date.now())).toBeLessThan(1_000);
  });

  it('is followed by every other one of the same file within 200 ms', async () => {
    const [mine, other] = [new SharedClock(path), new SharedClock(path)];
    other.nowMs();
    const wanted = new Date(Date.now() + 9 * 86_400_000);
    mine.moveTo(wanted);
    expect(Math.abs(mine.nowMs() - wanted.getTime())).toBeLessThan(1_000);
    await pause(200);
    expect(Math.abs(other.nowMs() - wanted.getTime())).toBeLessThan(1_500);
  });

  it('starts where it is told, before the machine too, and a later start does not set it back', () => {
    const first = new SharedClock(path, '2020-01-06T08:00:00Z');
    expect(Math.abs(first.nowMs() - Date.parse('2020-01-06T08:00:00Z'))).toBeLessThan(1_000);
    first.moveTo(new Date('2020-01-08T08:00:00Z'));
    const second = new SharedClock(path, '2020-01-06T08:00:00Z');
    expect(Math.abs(second.nowMs() - Date.parse('2020-01-08T08:00:00Z'))).toBeLessThan(1_000);
  });

  it('refuses to go back, and says what it shows', () => {
    const clock = new SharedClock(path, '2020-01-06T08:00:00Z');
    expect(() => {
      clock.moveTo(new Date('2020-01-05T08:00:00Z'));
    }).toThrow('moves forward only');
    expect(Math.abs(clock.nowMs() - Date.parse('2020-01-06T08:00:00Z'))).toBeLessThan(1_000);
  });
});
