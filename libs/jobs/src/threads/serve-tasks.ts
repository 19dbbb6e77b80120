import { parentPort } from 'node:worker_threads';
import { DomainError } from '@archwright/kernel';
import type { AnswerMessage, ProgressMessage, TaskMessage } from './messages.js';

/** Tells whoever waits for a task how far it has come. */
export type Report = (progress: unknown) => void;

/** Work by name. It runs to its end without a pause, one piece at a time. */
export type Tasks = Readonly<Record<string, (input: never, report: Report) => unknown>>;

/** Makes the present thread do these tasks for the pool that started it. */
export function serveTasks(tasks: Tasks): void {
  const port = parentPort;
  if (port === null) throw new Error('Tasks are served on a thread that a pool has started.');
  port.on('message', ({ task, input }: TaskMessage) => {
    const report = (progress: unknown): void => {
      port.postMessage({ progress } satisfies ProgressMessage);
    };
    port.postMessage(answerOf(tasks, task, input, report));
  });
}

function answerOf(tasks: Tasks, task: string, input: unknown, report: Report): AnswerMessage {
  const work = tasks[task];
  if (work === undefined)
    return { failed: `There is no task "${task}"; the tasks are ${Object.keys(tasks).join(', ')}.` };
  try {
    // The caller's side names the input's type by the task.
    return { answer: work(input as never, report) };
  } catch (error) {
    if (error instanceof DomainError) {
      const { code, message, details } = error;
      return { refused: { code, message, details } };
    }
    return { failed: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}
