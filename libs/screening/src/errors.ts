import { DomainError } from '@archwright/kernel';

/** Fewer values than the method needs: it says so instead of guessing. */
export class TooFewValuesError extends DomainError {
  constructor(method: string, given: number, needed: number, what = 'values') {
    super(
      'screening.too-few-values',
      `${method}: ${String(given)} ${what} given, at least ${String(needed)} are needed.`,
      { method, given, needed, what },
    );
  }
}

/** More values than the method answers in a minute, or than fit into memory. */
export class TooManyValuesError extends DomainError {
  constructor(method: string, given: number, most: number, what = 'values') {
    super(
      'screening.too-many-values',
      `${method}: ${String(given)} ${what} given. Accepted: up to ${String(most)}; give a part of them.`,
      { method, given, most, what },
    );
  }
}

/** A value that is no finite number, or so large that its square is none; `position` counts from 1. */
export class NotANumberError extends DomainError {
  constructor(method: string, position: number, value: number, largest: number) {
    super(
      'screening.not-a-number',
      `${method}: value ${String(position)} is ${String(value)}. Accepted: numbers up to ${String(largest)} in size.`,
      { method, position },
    );
  }
}

/** All values are equal (or lie in a plane): nothing can be judged against no spread. */
export class NoSpreadError extends DomainError {
  constructor(method: string, hint = 'More varied data are needed.') {
    super('screening.no-spread', `${method}: the values do not vary. ${hint}`, { method });
  }
}

/** An option outside its range. */
export class OptionError extends DomainError {
  constructor(method: string, option: string, given: unknown, accepted: string) {
    super('screening.option', `${method}: ${option} ${String(given)} is not accepted. Accepted: ${accepted}.`, {
      method,
      option,
      given: String(given),
      accepted,
    });
  }
}

/** Two columns that belong together differ in length, or rows in width. */
export class UnequalLengthsError extends DomainError {
  constructor(method: string, first: number, second: number) {
    super(
      'screening.unequal-lengths',
      `${method}: ${String(first)} values stand beside ${String(second)}. Accepted: as many in each, in the same order.`,
      { method, first, second },
    );
  }
}
