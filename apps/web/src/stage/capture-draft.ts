import type { StageView } from '@archwright/contracts';
import { z } from 'zod';
import { captureFields, subjectsOf } from './capture-boxes.js';
import type { CentricDraft } from './centric-view.js';
import type { TracingDraft } from './tracing-view.js';

/** What was typed and is not saved yet, by box. Texts, so that a half-typed number is never lost. */
export interface CaptureDraft {
  values: Record<string, string>;
  ticks: Record<string, boolean>;
  counts: Record<string, string>;
  /** New attempts and records only: what is saved stays as it was made. */
  tracings: TracingDraft[];
  centric: CentricDraft[];
}

export const emptyDraft: CaptureDraft = { values: {}, ticks: {}, counts: {}, tracings: [], centric: [] };

/** What the boxes hold: as recorded, with what was typed over it. */
export type Boxes = Pick<CaptureDraft, 'values' | 'ticks' | 'counts'>;

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

const keptDraft = z.object({
  values: z.record(z.string(), z.string()),
  ticks: z.record(z.string(), z.boolean()),
  counts: z.record(z.string(), z.string()),
  tracings: z.array(z.custom<TracingDraft>((each) => typeof each === 'object' && each !== null && 'points' in each)),
  centric: z.array(z.custom<CentricDraft>((each) => typeof each === 'object' && each !== null && 'method' in each)),
});

/** A draft that the browser kept over a reload; null when it is none. */
export function readDraft(kept: unknown): CaptureDraft | null {
  const parsed = keptDraft.safeParse(kept);
  return parsed.success ? parsed.data : null;
}
