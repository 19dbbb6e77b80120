import { Worker } from 'node:worker_threads';
import { DomainError } from '@archwright/kernel';
import { ThreadCrashedError } from './errors.js';
import type { AnswerMessage, ProgressMessage, TaskMessage } from './messages.js';
import type { ThreadEntry } from './thread-entry.js';

interface Current {
  readonly task: string;
  readonly onProgress: ((progress: unknown) => void) | undefined;
  readonly resolve: (answer: unknown) => void;
  readonly reject: (error: Error) => void;
}

/** One thread of a pool: does one task at a time, and is of no use any more once it has ended. */
export class PoolThread {
  private readonly worker: Worker;
  private current: Current | null = null;
  private failure: string | null = null;
  private ended = false;

  /** @param onEnd called once, when the thread is gone for whatever reason */
  constructor({ url, options }: ThreadEntry, onEnd: () => void) {
    this.worker = new Worker(url, options);
    this.worker.on('message', (message: AnswerMessage | ProgressMessage) => {
      if ('progress' in message) {
        this.current?.onProgress?.(message.progress);
        return;
      }
      this.settle((current) => {
        if ('answer' in message) current.resolve(message.answer);
        else current.reject(errorOf(current.task, message));
      });
    });
    this.worker.on('error', (error) => {
      this.ended = true;
      this.failure = error instanceof Error ? error.message : String(error);
    });
    this.worker.on('exit', (code) => {
      this.ended = true;
      const how = this.failure ?? `code ${String(code)}`;
      this.settle((current) => {
        current.reject(new ThreadCrashedError(current.task, how));
      });
      onEnd();
    });
    this.idle();
  }

  /** Ended or about to: takes no more work. */
  get hasEnded(): boolean {
    return this.ended;
  }

  /** Rejects with {@link ThreadCrashedError} when the thread ends in between. */
  run(message: TaskMessage, onProgress?: (progress: unknown) => void): Promise<unknown> {
    // A thread at work keeps the process alive until its answer is there.
    this.worker.ref();
    return new Promise((resolve, reject) => {
      this.current = { task: message.task, onProgress, resolve, reject };
      this.worker.postMessage(message);
    });
  }

  /** Ends the thread at once; what it works on is rejected with `reason`. */
  async end(reason: Error): Promise<void> {
    this.ended = true;
    this.settle((current) => {
      current.reject(reason);
    });
    await this.worker.terminate();
  }

  private settle(how: (current: Current) => void): void {
    const { current } = this;
    this.current = null;
    this.idle();
    if (current !== null) how(current);
  }

  private idle(): void {
    this.worker.unref();
  }
}

function errorOf(task: string, message: Exclude<AnswerMessage, { answer: unknown }>): Error {
  if ('failed' in message) return new Error(`The task "${task}" failed on its thread: ${message.failed}`);
  const { code, message: words, details } = message.refused;
  return new DomainError(code, words, details);
}
