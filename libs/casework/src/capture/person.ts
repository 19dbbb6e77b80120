import type { Actor } from '../actor.js';
import { NotYoursError } from '../errors.js';

/** @throws {NotYoursError} for the background service: some deeds are a person's */
export function personOf(actor: Actor, sentence: string): string {
  if (actor.userId === null) throw new NotYoursError(sentence);
  return actor.userId;
}
