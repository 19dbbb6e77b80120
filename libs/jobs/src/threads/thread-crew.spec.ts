import { ThreadCrew } from './thread-crew.js';
import { threadEntry } from './thread-entry.js';

const entry = threadEntry('trial-thread.builder', import.meta.url);
const crews: ThreadCrew[] = [];
afterEach(() => Promise.all(crews.splice(0).map((crew) => crew.close())));

function aCrew(size: number): ThreadCrew {
  const crew = new ThreadCrew({ entry, size, withinMs: 30_000 });
  crews.push(crew);
  return crew;
}

describe('a crew of threads', () => {
  it('gives each member its own part, and each remembers it', async () => {
    const crew = aCrew(2);
    expect(await crew.all('remember', (member) => `part ${String(member)}`)).toEqual([null, null]);
    expect(await crew.all('recall', () => null)).toEqual(['part 0', 'part 1']);
    expect(await crew.first('recall', null)).toBe('part 0');
  });

  it('calls off what all members work on', async () => {
    const controller = new AbortController();
    const memory = new SharedArrayBuffer(4);
    const waiting = aCrew(2).all('waitFor', () => memory, { signal: controller.signal });
    controller.abort();
    await expect(waiting).rejects.toMatchObject({ code: 'jobs.task-cancelled' });
  });

  it('refuses what it works on when it is closed', async () => {
    const crew = aCrew(2);
    const waiting = expect(crew.all('waitFor', () => new SharedArrayBuffer(4))).rejects.toMatchObject({
      code: 'jobs.threads-closed',
    });
    await crew.close();
    await waiting;
  });
});
