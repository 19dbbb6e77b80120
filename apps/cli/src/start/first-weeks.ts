import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { SharedClock } from '@archwright/platform';
import { StoppedError } from './undo-list.js';

/** The weeks before the present in which the first cases of the demonstration are treated. */
export interface FirstWeeks {
  readonly from: Date;
  readonly until: Date;
  /** Calls them off: a stop was asked for. */
  readonly signal: AbortSignal;
}

/**
 * Whether the first weeks of a data folder are still to be played: written down before its practice is loaded and
 * struck out when they are over, so that a start that was stopped, killed or refused on the way is gone on with.
 */
export class OwedWeeks {
  constructor(private readonly path: string) {}

  /** When they begin; null when nothing is owed. */
  from(): Date | null {
    if (!existsSync(this.path)) return null;
    const from = new Date(readFileSync(this.path, 'utf8').trim());
    return Number.isNaN(from.getTime()) ? null : from;
  }

  owe(from: Date): void {
    writeFileSync(`${this.path}.new`, `${from.toISOString()}\n`);
    renameSync(`${this.path}.new`, this.path);
  }

  settle(): void {
    rmSync(this.path, { force: true });
  }
}

interface Play {
  readonly owed: OwedWeeks;
  /** Of the demonstration's clock, which ends at the present. */
  readonly clockFile: string;
  readonly now: () => Date;
  readonly play: (weeks: FirstWeeks) => Promise<void>;
  readonly signal: AbortSignal;
  readonly say: (line: string) => void;
}

/**
 * Plays what is owed. A case that goes another way than the story keeps nobody from the rest of the demonstration: it is
 * told, the clock shows the present, and the next start goes on with it.
 *
 * @throws {StoppedError} when a stop was asked for meanwhile; the clock stays where it was
 */
export async function playOwedWeeks({ owed, clockFile, now, play, signal, say }: Play): Promise<void> {
  const from = owed.from();
  if (from === null) return;
  say('Treating the first cases of the demonstration (once, half a minute) ...');
  try {
    await play({ from, until: now(), signal });
    owed.settle();
  } catch (error) {
    if (signal.aborted) throw new StoppedError();
    say(`Some of them are not where they should be: ${error instanceof Error ? error.message : String(error)}`);
    say('The next start goes on with them.');
    catchUp(clockFile, now());
  }
}

/** A demonstration whose first cases are not treated any further would go on in the past. */
export function catchUp(clockFile: string, now: Date): void {
  const clock = new SharedClock(clockFile);
  if (clock.now() < now) clock.moveTo(now);
}
