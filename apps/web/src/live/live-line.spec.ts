import { jest } from '@jest/globals';
import type { ChangeNews } from '@archwright/contracts';
import { LiveLine, type Source } from './live-line.js';

class FakeSource implements Source {
  onmessage: Source['onmessage'] = null;
  onerror: Source['onerror'] = null;
  isClosed = false;
  constructor(readonly address: string) {}
  close(): void {
    this.isClosed = true;
  }
  say(position: string, news: Partial<ChangeNews> = {}): void {
    const data = JSON.stringify({ changes: [], isEverything: false, ...news });
    this.onmessage?.({ data, lastEventId: position } as MessageEvent<string>);
  }
  fail(): void {
    this.onerror?.({} as Event);
  }
}

let opened: FakeSource[];
let said: (boolean | string)[];
let line: LiveLine;
beforeEach(() => {
  jest.useFakeTimers();
  opened = [];
  said = [];
  line = new LiveLine(
    (address) => {
      const source = new FakeSource(address);
      opened.push(source);
      return source;
    },
    {
      onNews: ({ changes, isEverything }) => said.push(isEverything ? 'everything' : String(changes[0]?.kind)),
      onState: (isUp) => said.push(isUp),
      onBroken: () => said.push('broken'),
    },
  );
  line.start();
});
afterEach(() => {
  line.rest();
  jest.useRealTimers();
});

const last = (): FakeSource => {
  const source = opened.at(-1);
  if (source === undefined) throw new Error('no line was opened');
  return source;
};

it('passes on what happened, and not the signs of life between', () => {
  last().say('10');
  last().say('11', { changes: [{ kind: 'case', id: null, actorId: null }] });
  last().say('12', { isEverything: true });
  expect(said).toEqual([true, true, 'case', true, 'everything']);
});

it('goes on from the last message after a break, later with every failure', () => {
  last().say('10');
  last().fail();
  jest.advanceTimersByTime(999);
  expect(opened).toHaveLength(1);
  jest.advanceTimersByTime(1);
  expect(last().address).toBe('/api/v1/changes?after=10');
  last().fail();
  jest.advanceTimersByTime(1_999);
  expect(opened).toHaveLength(2);
  jest.advanceTimersByTime(1);
  expect(opened).toHaveLength(3);
});

it('says that the line is down only when it stays down', () => {
  last().fail();
  jest.advanceTimersByTime(1_000);
  last().say('1');
  jest.advanceTimersByTime(5_000);
  expect(said).toEqual(['broken', true]);
  last().fail();
  jest.advanceTimersByTime(4_000);
  expect(said).toEqual(['broken', true, 'broken', false]);
});

it('takes a silent line for a dead one', () => {
  last().say('10');
  jest.advanceTimersByTime(39_000);
  last().say('11');
  jest.advanceTimersByTime(39_999);
  expect(last().isClosed).toBe(false);
  jest.advanceTimersByTime(1);
  expect(last().isClosed).toBe(true);
  jest.advanceTimersByTime(1_000);
  expect(last().address).toBe('/api/v1/changes?after=11');
});

it('rests without a word, and wakes where it was', () => {
  last().say('10');
  line.rest();
  jest.advanceTimersByTime(3_600_000);
  expect([opened.length, last().isClosed]).toEqual([1, true]);
  line.start();
  expect(last().address).toBe('/api/v1/changes?after=10');
});
