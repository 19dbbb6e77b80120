import { countsLater, subjectOf, type Reading } from '@archwright/measures';
import type { Stage } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { loadCaptured } from './captured.js';

/** A reading of an earlier visit of the case. */
export interface EarlierReading {
  readonly reading: Reading;
  readonly at: Date;
  /** Code of the stage at which it was taken. */
  readonly stage: string;
}

/** A go that was repeated or dropped was taken back with everything that it measured. */
const TAKEN_BACK: readonly string[] = ['repeated', 'dropped'];

/**
 * What earlier visits measured and later ones are compared with: of each subject the latest.
 *
 * @param stages all of the stage's case
 */
export async function loadEarlier(
  tx: EntityManager,
  { stage, stages }: { readonly stage: Stage; readonly stages: readonly Stage[] },
): Promise<EarlierReading[]> {
  const before = stages
    .filter(({ position, state }) => position < stage.position && !TAKEN_BACK.includes(state))
    .sort((a, b) => a.position - b.position);
  const captured = await loadCaptured(
    tx,
    before.map(({ id }) => id),
  );
  const taken = before.flatMap(({ id, code }): EarlierReading[] =>
    (captured.get(id)?.readings ?? [])
      .filter(({ reading }) => countsLater(reading.code))
      .map((each) => ({ ...each, stage: code })),
  );
  const takenLast = new Map(taken.map(({ reading, stage: code }) => [subjectOf(reading), code]));
  return taken.filter(({ reading, stage: code }) => takenLast.get(subjectOf(reading)) === code);
}
