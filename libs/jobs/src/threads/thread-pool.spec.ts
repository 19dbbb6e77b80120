import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { ThreadPool, type PoolSettings } from './thread-pool.js';
import { threadEntry } from './thread-entry.js';

const entry = threadEntry('trial-thread.builder', import.meta.url);
const pools: ThreadPool[] = [];
afterEach(() => Promise.all(pools.splice(0).map((pool) => pool.close())));

function aPool(settings: Partial<PoolSettings> = {}): ThreadPool {
  const pool = new ThreadPool({ entry, size: 1, mostWaiting: 8, withinMs: 30_000, ...settings });
  pools.push(pool);
  return pool;
}

/** Memory that keeps `waitFor` waiting until `release` is called. */
function aGate() {
  const memory = new SharedArrayBuffer(4);
  const release = () => {
    Atomics.store(new Int32Array(memory), 0, 1);
    Atomics.notify(new Int32Array(memory), 0);
  };
  return { memory, release };
}

describe('a pool of threads', () => {
  it('answers every task, however many threads there are', async () => {
    const numbers = [1, 2, 3, 4, 5];
    for (const size of [1, 2]) {
      const pool = aPool({ size });
      expect(await Promise.all(numbers.map((each) => pool.run('double', each)))).toEqual([2, 4, 6, 8, 10]);
    }
  });

  it('leaves the event loop free: a request is answered while a task blocks its thread', async () => {
    const gate = aGate();
    const server = createServer((_request, reply) => reply.end('well'));
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const order: string[] = [];
    const search = aPool()
      .run('waitFor', gate.memory)
      .then(() => order.push('search'));
    const { port } = server.address() as AddressInfo;
    const health = await fetch(`http://127.0.0.1:${String(port)}/`, { headers: { connection: 'close' } });
    order.push(await health.text());
    // On the same thread nothing could ever have got here.
    gate.release();
    await search;
    expect(order).toEqual(['well', 'search']);
    await new Promise((resolve) => server.close(resolve));
  });

  it('tells what a task reports while it is under way, before its answer', async () => {
    const told: unknown[] = [];
    const answer = await aPool().run('count', 3, { onProgress: (progress) => told.push(progress) });
    expect([...told, answer]).toEqual([1, 2, 3, 'counted']);
  });

  it('passes on a refusal with its code and an unexpected error with its words', async () => {
    const pool = aPool();
    await expect(pool.run('refuse', 'offers')).rejects.toMatchObject({
      code: 'jobs.task-cancelled',
      details: { task: 'offers' },
    });
    await expect(pool.run('fail', null)).rejects.toThrow(/"fail" failed on its thread: RangeError: out of range/);
    await expect(pool.run('missing', null)).rejects.toThrow(/There is no task "missing"/);
  });

  it('says that a thread crashed, and goes on with another', async () => {
    const pool = aPool();
    const results = await Promise.allSettled([pool.run('crash', null), pool.run('double', 4)]);
    expect(results).toMatchObject([{ reason: { code: 'jobs.thread-crashed' } }, { value: 8 }]);
  });

  it('takes no more than may wait', async () => {
    const gate = aGate();
    const pool = aPool({ mostWaiting: 1 });
    const taken = [pool.run('waitFor', gate.memory), pool.run('double', 1)];
    await expect(pool.run('double', 2)).rejects.toMatchObject({ code: 'jobs.threads-busy', details: { waiting: 1 } });
    gate.release();
    expect(await Promise.all(taken)).toEqual(['released', 2]);
  });

  it('calls off what waits and what runs', async () => {
    const pool = aPool();
    const [running, waiting] = [new AbortController(), new AbortController()];
    const tasks = [pool.run('waitFor', aGate().memory, running), pool.run('double', 1, waiting), pool.run('double', 2)];
    const results = Promise.allSettled(tasks);
    waiting.abort();
    running.abort();
    const cancelled = { reason: { code: 'jobs.task-cancelled' } };
    expect(await results).toMatchObject([cancelled, cancelled, { value: 4 }]);
  });

  it('ends a task that takes too long, and everything when it is closed', async () => {
    const pool = aPool({ withinMs: 50 });
    await expect(pool.run('waitFor', aGate().memory)).rejects.toMatchObject({ code: 'jobs.task-too-long' });
    const other = aPool();
    const left = Promise.allSettled([other.run('waitFor', aGate().memory), other.run('double', 1)]);
    await other.close();
    const closed = { reason: { code: 'jobs.threads-closed' } };
    expect(await left).toMatchObject([closed, closed]);
    await expect(other.run('double', 1)).rejects.toMatchObject(closed.reason);
  });
});
