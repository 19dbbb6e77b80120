import type { ThreadEntry } from './thread-entry.js';
import { ThreadPool, type TaskOptions } from './thread-pool.js';

interface CrewSettings {
  readonly entry: ThreadEntry;
  readonly size: number;
  /** A task is ended when it takes longer than this on its thread. */
  readonly withinMs: number;
}

/** Threads that work on one thing together: each does its own part, and remembers it from task to task. */
export class ThreadCrew {
  private readonly members: readonly ThreadPool[];

  constructor({ entry, size, withinMs }: CrewSettings) {
    this.members = Array.from({ length: size }, () => new ThreadPool({ entry, size: 1, mostWaiting: 1, withinMs }));
  }

  get size(): number {
    return this.members.length;
  }

  /**
   * Gives every member a task and waits for all answers, in the members' order. Close the crew when it rejects: what the
   * other members work on then is of no use.
   *
   * @throws {DomainError} as {@link ThreadPool.run}
   */
  all(task: string, inputOf: (member: number) => unknown, options?: TaskOptions): Promise<unknown[]> {
    return Promise.all(this.members.map((member, number) => member.run(task, inputOf(number), options)));
  }

  /** Gives the first member a task. */
  first(task: string, input: unknown, options?: TaskOptions): Promise<unknown> {
    const [member] = this.members;
    if (member === undefined) throw new Error('A crew has at least one member.');
    return member.run(task, input, options);
  }

  /** Ends the threads; what they work on is rejected. */
  async close(): Promise<void> {
    await Promise.all(this.members.map((member) => member.close()));
  }
}
