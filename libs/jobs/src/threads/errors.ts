import { DomainError } from '@archwright/kernel';

/** So much work waits for a thread that more would only wait in vain. */
export class ThreadsBusyError extends DomainError {
  constructor(task: string, waiting: number) {
    super(
      'jobs.threads-busy',
      `${String(waiting)} searches wait already, so "${task}" was not taken. Ask again in a moment.`,
      { task, waiting },
    );
  }
}

/** The thread ended in the middle of its work; another one takes its place. */
export class ThreadCrashedError extends DomainError {
  constructor(task: string, how: string) {
    super('jobs.thread-crashed', `The thread that worked on "${task}" ended: ${how}. Ask again.`, { task, how });
  }
}

/** The work took longer than it may; its thread was ended. */
export class TaskTooLongError extends DomainError {
  constructor(task: string, withinMs: number) {
    super(
      'jobs.task-too-long',
      `"${task}" was ended after ${String(withinMs)} ms without an answer. Ask for less, such as fewer clinics or offers.`,
      { task, withinMs },
    );
  }
}

/** The caller no longer wants the answer. */
export class TaskCancelledError extends DomainError {
  constructor(task: string) {
    super('jobs.task-cancelled', `"${task}" was called off before it had an answer.`, { task });
  }
}

/** The process is ending and takes no more work. */
export class ThreadsClosedError extends DomainError {
  constructor(task: string) {
    super('jobs.threads-closed', `"${task}" was not done: the service is stopping. Ask again when it is back.`, {
      task,
    });
  }
}
