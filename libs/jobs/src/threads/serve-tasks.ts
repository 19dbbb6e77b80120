import { parentPort } from 'node:worker_threads';
import { DomainError } from '@archwright/kernel';
import type { AnswerMessage, TaskMessage } from './messages.js';

/** Work by name. It runs to its end without a pause, one piece at a time. */
export type Tasks = Readonly<Record<string, (input: never) => unknown>>;

/** Makes the present thread do these tasks for the pool that started it. */
export function serveTasks(tasks: Tasks): void {
  const port = parentPort;
  if (port === null) throw new Error('Tasks are served on a thread that a pool has started.');
  port.on('message', ({ task, input }: TaskMessage) => {
    port.postMessage(answerOf(tasks, task, input));
  });
}

function answerOf(tasks: Tasks, task: string, input: unknown): AnswerMessage {
  const work = tasks[task];
  if (work === undefined)
    return { failed: `There is no task "${task}"; the tasks are ${Object.keys(tasks).join(', ')}.` };
  try {
    // The caller's side names the input's type by the task.
    return { answer: work(input as never) };
  } catch (error) {
    if (error instanceof DomainError) {
      const { code, message, details } = error;
      return { refused: { code, message, details } };
    }
    return { failed: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}
