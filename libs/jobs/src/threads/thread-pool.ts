import { availableParallelism } from 'node:os';
import { TaskCancelledError, TaskTooLongError, ThreadsBusyError, ThreadsClosedError } from './errors.js';
import { PoolThread } from './pool-thread.js';
import type { ThreadEntry } from './thread-entry.js';

export interface PoolSettings {
  readonly entry: ThreadEntry;
  /** Threads at most; left out: a core stays free for everything else, and on one core there is one thread all the same. */
  readonly size?: number;
  /** Tasks that may wait for a thread. */
  readonly mostWaiting: number;
  /** A task is ended when it takes longer than this on its thread. */
  readonly withinMs: number;
}

/** What whoever asks for a task may want beyond its answer. */
export interface TaskOptions {
  /** Calls the task off: it leaves the queue, or its thread is ended. */
  readonly signal?: AbortSignal | undefined;
  /** Told what the task reports while it is under way. */
  readonly onProgress?: (progress: unknown) => void;
}

interface Waiting {
  readonly task: string;
  readonly input: unknown;
  readonly resolve: (answer: unknown) => void;
  readonly reject: (error: Error) => void;
  readonly options: TaskOptions;
}

/**
 * Threads for work that would keep an event loop from answering. They start when they are first needed and are used
 * again; the one that was used last comes first, since it may remember the question before.
 */
export class ThreadPool {
  private readonly size: number;
  private readonly threads = new Set<PoolThread>();
  private readonly free: PoolThread[] = [];
  private readonly waiting: Waiting[] = [];
  private isClosed = false;

  constructor(private readonly settings: PoolSettings) {
    this.size = settings.size ?? Math.max(1, availableParallelism() - 1);
  }

  /**
   * Does a task on a thread. Input and answer are copied.
   *
   * @throws {DomainError} what the task refuses, by its code; and {@link ThreadsBusyError}, {@link ThreadCrashedError},
   * {@link TaskTooLongError}, {@link TaskCancelledError}, {@link ThreadsClosedError}
   */
  run(task: string, input: unknown, options: TaskOptions = {}): Promise<unknown> {
    const { signal } = options;
    if (this.isClosed) return Promise.reject(new ThreadsClosedError(task));
    if (signal?.aborted === true) return Promise.reject(new TaskCancelledError(task));
    const isFull = this.free.length === 0 && this.threads.size >= this.size;
    if (isFull && this.waiting.length >= this.settings.mostWaiting)
      return Promise.reject(new ThreadsBusyError(task, this.waiting.length));
    return new Promise((resolve, reject) => {
      const entry: Waiting = { task, input, resolve, reject, options };
      this.waiting.push(entry);
      signal?.addEventListener('abort', () => {
        const at = this.waiting.indexOf(entry);
        if (at < 0) return;
        this.waiting.splice(at, 1);
        reject(new TaskCancelledError(task));
      });
      this.serve();
    });
  }

  /** Ends all threads; what waits or runs is rejected. */
  async close(): Promise<void> {
    this.isClosed = true;
    for (const { task, reject } of this.waiting.splice(0)) reject(new ThreadsClosedError(task));
    await Promise.all([...this.threads].map((thread) => thread.end(new ThreadsClosedError('a search'))));
  }

  private serve(): void {
    while (this.waiting.length > 0) {
      const thread = this.free.pop() ?? (this.threads.size < this.size ? this.start() : undefined);
      if (thread === undefined) return;
      const next = this.waiting.shift();
      if (next !== undefined) void this.work(thread, next);
    }
  }

  private start(): PoolThread {
    const thread = new PoolThread(this.settings.entry, () => {
      this.threads.delete(thread);
      const at = this.free.indexOf(thread);
      if (at >= 0) this.free.splice(at, 1);
      this.serve();
    });
    this.threads.add(thread);
    return thread;
  }

  private async work(thread: PoolThread, { task, input, resolve, reject, options }: Waiting): Promise<void> {
    const { withinMs } = this.settings;
    const { signal, onProgress } = options;
    // A task runs to its end without looking up, so the only way to stop it is to end its thread.
    const cancel = () => void thread.end(new TaskCancelledError(task));
    const timer = setTimeout(() => void thread.end(new TaskTooLongError(task, withinMs)), withinMs);
    signal?.addEventListener('abort', cancel);
    try {
      resolve(await thread.run({ task, input }, onProgress));
    } catch (error) {
      reject(error as Error);
    } finally {
      clearTimeout(timer);
      signal?.removeEventListener('abort', cancel);
    }
    // An ended thread leaves the set a moment later.
    if (this.threads.has(thread) && !thread.hasEnded) this.free.push(thread);
    this.serve();
  }
}
