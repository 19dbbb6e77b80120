/**
 * An expected refusal: what was wrong, where, and what would be accepted.
 *
 * `code` is stable and reads `lib.reason`; the edges map it to a status and the browser to its own words.
 * `details` carries the values that the message names, never patient data. A broken invariant is a plain `Error`.
 */
export class DomainError extends Error {
  constructor(
    readonly code: string,
    message: string,
    readonly details: Readonly<Record<string, unknown>> = {},
  ) {
    super(message);
    this.name = new.target.name;
  }
}
