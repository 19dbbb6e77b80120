import type { Arch, RecordCapture, StageView } from '@archwright/contracts';
import { stageWords } from '../words/chair.js';
import { lineWords } from '../words/line.js';
import { typedNumber } from './typed-number.js';
import { readTracing, draftOfTracing, type TracingDraft } from './tracing-view.js';

type Field = StageView['fields'][number];

/** One box to fill in: a field may ask for several readings, and for each arch. */
export interface Entry {
  key: string;
  label: string;
  arch: Arch | null;
}

export interface FieldEntry {
  code: string;
  name: string;
  kind: Field['kind'];
  unit: string;
  hint: string;
  choices: Field['choices'];
  landmarks: string[];
  landmarksKey: string;
  caution: string | null;
  source: string;
  entries: Entry[];
}

/** What was typed, by entry. Texts, so that a half-typed number is never lost. */
export interface CaptureDraft {
  values: Record<string, string>;
  ticks: Record<string, boolean>;
  counts: Record<string, string>;
  tracings: TracingDraft[];
}

const keyOf = (code: string, arch: Arch | null, index: number): string => `${code}|${arch ?? ''}|${String(index)}`;
const landmarksKeyOf = (code: string): string => `${code}|landmarks`;

/** Fields as boxes in the order in which they are measured. */
export function captureFields(view: StageView, arches: readonly Arch[]): FieldEntry[] {
  return view.fields.map((field) => {
    const sides: (Arch | null)[] = field.perArch && arches.length > 0 ? [...arches] : [null];
    const repeats = Math.max(1, field.readings);
    return {
      code: field.code,
      name: field.name,
      kind: field.kind,
      unit: field.unit ?? '',
      hint: field.usual ? stageWords.usual(field.usual.min, field.usual.max, field.unit ?? '').trim() : '',
      choices: field.choices,
      landmarks: field.landmarks,
      landmarksKey: landmarksKeyOf(field.code),
      caution: field.caution,
      source: field.source,
      entries: sides.flatMap((arch) =>
        Array.from({ length: repeats }, (_, index) => ({
          key: keyOf(field.code, arch, index),
          label: [arch ? lineWords.arch[arch] : '', stageWords.reading(index + 1, repeats)].filter(Boolean).join(', '),
          arch,
        })),
      ),
    };
  });
}

/** The form as the server knows it: the latest readings of each field, ticks and attempts. */
export function draftOfStage(view: StageView, arches: readonly Arch[]): CaptureDraft {
  const values: Record<string, string> = {};
  for (const field of captureFields(view, arches)) {
    for (const arch of new Set(field.entries.map((entry) => entry.arch))) {
      const boxes = field.entries.filter((entry) => entry.arch === arch);
      const known = view.readings
        .filter((reading) => reading.code === field.code && (arch === null || reading.arch === arch))
        .sort((a, b) => a.at.localeCompare(b.at))
        .slice(-boxes.length);
      known.forEach((reading, index) => {
        const box = boxes[index];
        if (box) values[box.key] = String(reading.value);
        if (reading.landmarks) values[field.landmarksKey] = reading.landmarks;
      });
    }
  }
  return {
    values,
    ticks: Object.fromEntries(view.checklist.filter((line) => !line.counted).map((line) => [line.code, line.done])),
    counts: Object.fromEntries(
      view.checklist
        .filter((line) => line.counted)
        .map((line) => [line.code, line.count === null ? '' : String(line.count)]),
    ),
    tracings: view.tracings.map(draftOfTracing),
  };
}

type Value = RecordCapture['readings'][number]['value'];

function readValue(field: Field, text: string): { value: Value } | { error: string } {
  if (field.kind === 'boolean') return { value: text === 'true' };
  if (field.kind === 'enum' || field.kind === 'text') return { value: text.trim() };
  const value = typedNumber(text);
  if (value === null) return { error: field.kind === 'count' ? stageWords.notWhole : stageWords.notANumber };
  if (field.kind === 'count' && (!Number.isInteger(value) || value < 0)) return { error: stageWords.notWhole };
  if (field.plausible && (value < field.plausible.min || value > field.plausible.max)) {
    return {
      error: stageWords.plausible(field.plausible.min, field.plausible.max, field.unit ?? '').replace(' .', '.'),
    };
  }
  return { value };
}

/** What would be saved, or what stands in the way by box. Empty boxes are simply not recorded. */
export function readCapture(
  view: StageView,
  arches: readonly Arch[],
  draft: CaptureDraft,
): { body: RecordCapture } | { errors: Record<string, string> } {
  const errors: Record<string, string> = {};
  const readings: RecordCapture['readings'] = [];
  const byCode = new Map(view.fields.map((field) => [field.code, field]));
  for (const { code, entries, landmarksKey } of captureFields(view, arches)) {
    const field = byCode.get(code);
    const landmarks = draft.values[landmarksKey];
    for (const entry of entries) {
      const text = draft.values[entry.key] ?? '';
      if (!field || text.trim() === '') continue;
      const read = readValue(field, text);
      if ('error' in read) errors[entry.key] = read.error;
      else {
        readings.push({
          code,
          value: read.value,
          ...(field.unit ? { unit: field.unit } : {}),
          ...(entry.arch ? { arch: entry.arch } : {}),
          ...(landmarks ? { landmarks } : {}),
        });
      }
    }
  }
  const checklist: RecordCapture['checklist'] = {};
  for (const line of view.checklist) {
    if (!line.counted) checklist[line.code] = draft.ticks[line.code] ?? false;
    else if ((draft.counts[line.code] ?? '').trim() !== '') {
      const n = typedNumber(draft.counts[line.code] ?? '');
      if (n === null || !Number.isInteger(n) || n < 0) errors[`checklist|${line.code}`] = stageWords.countMissing;
      else checklist[line.code] = n;
    }
  }
  const tracings: RecordCapture['tracings'] = [];
  draft.tracings.forEach((tracing, index) => {
    const read = readTracing(tracing, index + 1);
    if ('errors' in read)
      for (const [name, words] of Object.entries(read.errors)) errors[`tracing|${String(index)}|${name}`] = words;
    else tracings.push(read.entry);
  });
  return Object.keys(errors).length > 0 ? { errors } : { body: { readings, tracings, checklist } };
}
