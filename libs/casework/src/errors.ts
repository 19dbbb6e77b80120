import { DomainError } from '@archwright/kernel';

/** Unknown here; whether another organisation has it is not told. */
export class RecordNotFoundError extends DomainError {
  constructor(kind: string, id: string) {
    super('casework.not-found', `There is no ${kind} ${id} that you may see.`, { kind, id });
  }
}

export class NotYoursError extends DomainError {
  constructor(sentence: string) {
    super('casework.forbidden', sentence);
  }
}

/** What was asked does not fit the state that the record is in. */
export class WrongStateError extends DomainError {
  constructor(what: string, state: string, accepted: string) {
    super('casework.state-conflict', `${what} is ${state}; accepted: ${accepted}.`, { state, accepted });
  }
}
