import type { StageView } from '@archwright/contracts';
import { z } from 'zod';
import { captureFields, subjectsOf } from './capture-boxes.js';
import type { CentricDraft } from './centric-view.js';
import type { TracingDraft } from './tracing-view.js';

/** What the boxes hold. Texts, so that a half-typed number is never lost. */
export interface Boxes {
  values: Record<string, string>;
  ticks: Record<string, boolean>;
  counts: Record<string, string>;
}

/** New attempts and records: what is saved stays as it was made. */
export interface NewRecords {
  tracings: TracingDraft[];
  centric: CentricDraft[];
}

/** What was typed and is not saved yet, by box, and what is new. */
export type CaptureDraft = Boxes & NewRecords;

export const noRecords: NewRecords = { tracings: [], centric: [] };
export const emptyDraft: CaptureDraft = { values: {}, ticks: {}, counts: {}, ...noRecords };

/** Attempts and records that were added or changed while those that were sent were being saved. */
export const recordsSince = (now: NewRecords, sent: NewRecords): NewRecords => ({
  tracings: without(now.tracings, sent.tracings),
  centric: without(now.centric, sent.centric),
});

/** Each of `taken` takes away one that is equal to it: two attempts may well be equal. */
function without<T>(list: readonly T[], taken: readonly T[]): T[] {
  const left = taken.map((each) => JSON.stringify(each));
  return list.filter((each) => {
    const at = left.indexOf(JSON.stringify(each));
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

/** Every box as the server knows it: the latest readings, ticks and counts. */
export function recordedBoxes(view: StageView): Boxes {
  const values: Record<string, string> = {};
  const known = [...view.readings].sort((a, b) => a.at.localeCompare(b.at));
  for (const field of captureFields(view)) {
    for (const boxes of subjectsOf(field)) {
      const first = boxes[0];
      const fitting = known
        .filter(
          (reading) =>
            reading.code === field.code &&
            (first?.arch ?? undefined) === reading.arch &&
            (first?.side ?? undefined) === reading.side &&
            (first?.region ?? undefined) === reading.region,
        )
        .slice(-boxes.length);
      fitting.forEach((reading, index) => {
        const box = boxes[index];
        if (box) values[box.key] = String(reading.value);
        for (const { key, stored } of field.method) {
          const answer = reading.method?.[key];
          if (answer) values[stored] = answer;
        }
      });
    }
  }
  const plain = view.checklist.filter((line) => !line.counted);
  const counted = view.checklist.filter((line) => line.counted);
  return {
    values,
    ticks: Object.fromEntries(plain.map((line) => [line.code, line.done])),
    counts: Object.fromEntries(counted.map(({ code, count }) => [code, count === null ? '' : String(count)])),
  };
}

export const withTyped = (recorded: Boxes, typed: CaptureDraft): Boxes => ({
  values: { ...recorded.values, ...typed.values },
  ticks: { ...recorded.ticks, ...typed.ticks },
  counts: { ...recorded.counts, ...typed.counts },
});

const keptRecords = z.object({
  tracings: z.array(z.custom<TracingDraft>((each) => typeof each === 'object' && each !== null && 'points' in each)),
  centric: z.array(
    z.custom<CentricDraft>((each) => typeof each === 'object' && each !== null && 'closureCount' in each),
  ),
});

/** New records that the browser kept over a reload; null when they are none. */
export const readRecords = (kept: unknown): NewRecords | null => keptRecords.safeParse(kept).data ?? null;
