import type { Arch, RecordCapture, StageView } from '@archwright/contracts';
import { stageWords } from '../words/chair.js';
import { lineWords } from '../words/line.js';
import { spelled } from '../words/plural.js';
import { draftOfCentric, readCentric, type CentricDraft } from './centric-view.js';
import { draftOfTracing, readTracing, type TracingDraft } from './tracing-view.js';
import { typedNumber } from './typed-number.js';

type Field = StageView['fields'][number];
type Reading = RecordCapture['readings'][number];
type Side = Field['sides'][number];

/** One box to fill in: a field may ask for several readings, for each arch, side or region. */
export interface Entry {
  key: string;
  label: string;
  arch: Arch | null;
  side: Side | null;
  region: string | null;
}

export interface FieldEntry {
  code: string;
  name: string;
  required: boolean;
  kind: Field['kind'];
  unit: string;
  hint: string;
  choices: Field['choices'];
  method: {
    key: string;
    stored: string;
    question: string;
    options: { value: string; label: string }[];
    required: boolean;
  }[];
  caution: string | null;
  source: string;
  entries: Entry[];
}

/** What was typed, by box. Texts, so that a half-typed number is never lost. */
export interface CaptureDraft {
  values: Record<string, string>;
  ticks: Record<string, boolean>;
  counts: Record<string, string>;
  tracings: TracingDraft[];
  centric: CentricDraft[];
}

const orNone = <T>(list: readonly T[]): (T | null)[] => (list.length > 0 ? [...list] : [null]);

function entriesOf(field: Field): Entry[] {
  const repeats = Math.max(1, field.readings);
  return orNone(field.arches).flatMap((arch) =>
    orNone(field.sides).flatMap((side) =>
      orNone(field.regions).flatMap((region) =>
        Array.from({ length: repeats }, (_, index) => ({
          key: [field.code, arch ?? '', side ?? '', region ?? '', String(index)].join('|'),
          label: [
            arch ? lineWords.arch[arch] : '',
            side ? stageWords.side[side] : '',
            region ? spelled(region) : '',
            stageWords.reading(index + 1, repeats),
          ]
            .filter(Boolean)
            .join(', '),
          arch,
          side,
          region,
        })),
      ),
    ),
  );
}

/** Fields as boxes in the order in which they are measured. */
export const captureFields = (view: StageView): FieldEntry[] =>
  view.fields.map((field) => ({
    code: field.code,
    name: field.name,
    required: field.required,
    kind: field.kind,
    unit: field.unit ?? '',
    hint: field.usual ? stageWords.usual(field.usual.min, field.usual.max, field.unit ?? '').trim() : '',
    choices: field.choices,
    method: field.method.map((question) => ({
      key: question.key,
      stored: `${field.code}|method|${question.key}`,
      question: question.question,
      options: question.options.map((option) => ({ value: option, label: spelled(option) })),
      required: question.required,
    })),
    caution: field.caution,
    source: field.source,
    entries: entriesOf(field),
  }));

/** The form as the server knows it: the latest readings of each box, ticks and attempts. */
export function draftOfStage(view: StageView): CaptureDraft {
  const values: Record<string, string> = {};
  const known = [...view.readings].sort((a, b) => a.at.localeCompare(b.at));
  for (const field of captureFields(view)) {
    const groups = new Map<string, Entry[]>();
    for (const entry of field.entries) {
      const group = [entry.arch, entry.side, entry.region].join('|');
      groups.set(group, [...(groups.get(group) ?? []), entry]);
    }
    for (const boxes of groups.values()) {
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
  return {
    values,
    ticks: Object.fromEntries(view.checklist.filter((line) => !line.counted).map((line) => [line.code, line.done])),
    counts: Object.fromEntries(
      view.checklist
        .filter((line) => line.counted)
        .map((line) => [line.code, line.count === null ? '' : String(line.count)]),
    ),
    tracings: view.tracings.map(draftOfTracing),
    centric: view.otherCentricRelation.map(draftOfCentric),
  };
}

function readValue(field: Field, text: string): { value: Reading['value'] } | { error: string } {
  if (field.kind === 'boolean') return { value: text === 'true' };
  if (field.kind === 'enum' || field.kind === 'text') return { value: text.trim() };
  const value = typedNumber(text);
  if (value === null) return { error: field.kind === 'count' ? stageWords.notWhole : stageWords.notANumber };
  if (field.kind === 'count' && (!Number.isInteger(value) || value < 0)) return { error: stageWords.notWhole };
  if (field.plausible && (value < field.plausible.min || value > field.plausible.max)) {
    return { error: stageWords.plausible(field.plausible.min, field.plausible.max, field.unit ?? '') };
  }
  return { value };
}

type Errors = Record<string, string>;

function readReadings(view: StageView, draft: CaptureDraft, errors: Errors): Reading[] {
  const byCode = new Map(view.fields.map((field) => [field.code, field]));
  const readings: Reading[] = [];
  for (const { code, entries, method } of captureFields(view)) {
    const field = byCode.get(code);
    const filled = entries.filter((entry) => (draft.values[entry.key] ?? '').trim() !== '');
    if (!field || filled.length === 0) continue;
    const answers: Record<string, string> = {};
    for (const { key, stored, required } of method) {
      const answer = draft.values[stored] ?? '';
      if (answer) answers[key] = answer;
      else if (required) errors[stored] = stageWords.methodMissing;
    }
    for (const entry of filled) {
      const read = readValue(field, draft.values[entry.key] ?? '');
      if ('error' in read) errors[entry.key] = read.error;
      else {
        readings.push({
          code,
          value: read.value,
          ...(field.unit ? { unit: field.unit } : {}),
          ...(entry.arch ? { arch: entry.arch } : {}),
          ...(entry.side ? { side: entry.side } : {}),
          ...(entry.region ? { region: entry.region } : {}),
          ...(Object.keys(answers).length > 0 ? { method: answers } : {}),
        });
      }
    }
  }
  return readings;
}

function readChecklist(view: StageView, draft: CaptureDraft, errors: Errors): RecordCapture['checklist'] {
  const checklist: RecordCapture['checklist'] = {};
  for (const line of view.checklist) {
    const text = draft.counts[line.code] ?? '';
    if (!line.counted) checklist[line.code] = draft.ticks[line.code] ?? false;
    else if (text.trim() !== '') {
      const n = typedNumber(text);
      if (n === null || !Number.isInteger(n) || n < 0) errors[`checklist|${line.code}`] = stageWords.countMissing;
      else checklist[line.code] = n;
    }
  }
  return checklist;
}

/** What would be saved, or what stands in the way by box. Empty boxes are simply not recorded. */
export function readCapture(view: StageView, draft: CaptureDraft): { body: RecordCapture } | { errors: Errors } {
  const errors: Errors = {};
  const readings = readReadings(view, draft, errors);
  const checklist = readChecklist(view, draft, errors);
  const tracings = draft.tracings.flatMap((tracing, index) => readTracing(tracing, `tracing|${String(index)}`, errors));
  const otherCentricRelation = draft.centric.flatMap((record, index) =>
    readCentric(record, `centric|${String(index)}`, errors),
  );
  return Object.keys(errors).length > 0
    ? { errors }
    : { body: { readings, tracings, checklist, otherCentricRelation } };
}

/** Landmarks between which the stage measures lengths, for records that name their own. */
export function landmarkOptions(view: StageView): { value: string; label: string }[] {
  const options = view.fields.flatMap((field) =>
    field.method.filter((one) => one.key === 'landmarks').flatMap((one) => one.options),
  );
  return [...new Set(options)].map((option) => ({ value: option, label: spelled(option) }));
}
