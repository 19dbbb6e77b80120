import type { StageView, StateBearingScrew } from '@archwright/contracts';
import { z } from 'zod';
import type { Clash } from '../drafts/rebase.js';
import type { ClashRow } from '../look/clash-sheet.js';
import { typedNumber } from '../stage/typed-number.js';
import { spelled } from '../words/plural.js';
import { verticalWords as words } from '../words/vertical.js';

type Screw = NonNullable<StageView['tracingKit']>['screw'];

/** The screw of a tracing set as it is typed. */
export interface ScrewDraft {
  pitch: string;
  raisesBy: StateBearingScrew['raisesBy'];
}

const LEAST_MM = 0.1;
const MOST_MM = 3;

export const draftOfScrew = (screw: Screw): ScrewDraft => ({
  pitch: screw === null ? '' : String(screw.pitchMmPerTurn),
  raisesBy: screw?.raisesBy ?? 'clockwise',
});

/** What would be stated; null while the rise of a turn is none that a screw has. */
export function readScrew({ pitch, raisesBy }: ScrewDraft): Omit<StateBearingScrew, 'instead'> | null {
  const pitchMmPerTurn = typedNumber(pitch);
  if (pitchMmPerTurn === null || pitchMmPerTurn < LEAST_MM || pitchMmPerTurn > MOST_MM) return null;
  return { pitchMmPerTurn, raisesBy };
}

const keptScrew = z.object({ pitch: z.string(), raisesBy: z.enum(['clockwise', 'counter-clockwise']) });

/** A draft that the browser kept over a reload; null when it is none. */
export const readScrewDraft = (kept: unknown): ScrewDraft | null => keptScrew.safeParse(kept).data ?? null;

const LABELS: Record<keyof ScrewDraft, string> = { pitch: words.pitch, raisesBy: words.raisesBy };

export const screwClashes = (clashes: readonly Clash<ScrewDraft>[]): ClashRow[] =>
  clashes.map(({ field, mine, theirs }) => ({
    key: field,
    label: LABELS[field],
    mine: field === 'pitch' ? mine : spelled(mine),
    theirs: field === 'pitch' ? theirs : spelled(theirs),
  }));
