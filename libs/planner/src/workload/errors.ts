import { DomainError } from '@archwright/kernel';

/** A centre is never open for long enough, or has no place, for an operation that needs one. */
export class NoRoomAtCentreError extends DomainError {
  constructor(job: string, operation: string, centre: string) {
    super(
      'planner.no-room-at-centre',
      `"${operation}" of "${job}" fits nowhere at "${centre}", however little else is done there. ` +
        `Open the centre for longer, give it a place, or let the work be done elsewhere.`,
      { job, operation, centre },
    );
  }
}

/** A wait that runs against the order in which the operations are listed could be part of a circle. */
export class UnorderedWorkError extends DomainError {
  constructor(job: string, from: number, to: number) {
    super(
      'planner.unordered-work',
      `In "${job}" operation ${from} waits for operation ${to}, which is listed after it. ` +
        `List each operation after everything that it waits for.`,
      { job, from, to },
    );
  }
}

/** One unit that is larger than a whole run. */
export class RunTooSmallError extends DomainError {
  constructor(job: string, operation: string, units: number, size: number) {
    super(
      'planner.run-too-small',
      `"${operation}" of "${job}" takes ${units} units of a run that has ${size}. Accepted: ${size} or fewer.`,
      { job, operation, units, size },
    );
  }
}
