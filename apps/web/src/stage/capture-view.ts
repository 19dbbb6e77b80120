import type { RecordCapture, StageView } from '@archwright/contracts';
import type { TracingEntry } from '@archwright/measures';
import type { Evaluator } from '../tracing-pad/drawn-tracing.js';
import { stageWords } from '../words/chair.js';
import { captureFields, subjectsOf, type Entry, type FieldEntry } from './capture-boxes.js';
import { recordedBoxes, withTyped, type Boxes, type CaptureDraft } from './capture-draft.js';
import { readCentric } from './centric-view.js';
import { entryOf, readTracing } from './tracing-view.js';
import { typedNumber } from './typed-number.js';

type Field = StageView['fields'][number];
type Reading = RecordCapture['readings'][number];
type Errors = Record<string, string>;

/** What saving would send: only what differs from what is recorded, so that nothing counts as measured again. */
export interface ReadDraft {
  body: RecordCapture;
  /** The tracings of the body as the checks judge them. */
  entries: TracingEntry[];
  /** Refusals by box. Nothing is sent while there are any. */
  errors: Errors;
  isChanged: boolean;
}

/** @param evaluator reads drawings; null where there are none, or while it is being fetched */
export function readCapture(view: StageView, typed: CaptureDraft, evaluator: Evaluator | null): ReadDraft {
  const errors: Errors = {};
  const recorded = recordedBoxes(view);
  const now = withTyped(recorded, typed);
  const body = {
    readings: readReadings(view, recorded, now, errors),
    checklist: readChecklist(view, recorded, now, errors),
    tracings: typed.tracings.flatMap((tracing, index) =>
      readTracing(tracing, `tracing|${String(index)}`, errors, evaluator),
    ),
    otherCentricRelation: typed.centric.flatMap((record, index) =>
      readCentric(record, `centric|${String(index)}`, errors),
    ),
  };
  const size = body.readings.length + body.tracings.length + body.otherCentricRelation.length;
  const isChanged = size + Object.keys(body.checklist).length + Object.keys(errors).length > 0;
  return { body, entries: body.tracings.flatMap((given) => entryOf(given, evaluator)), errors, isChanged };
}

function readReadings(view: StageView, recorded: Boxes, now: Boxes, errors: Errors): Reading[] {
  const byCode = new Map(view.fields.map((field) => [field.code, field]));
  return captureFields(view).flatMap((entry) => {
    const field = byCode.get(entry.code);
    if (field === undefined) return [];
    const answered = entry.method.some(({ stored }) => differs(recorded.values, now.values, stored));
    return subjectsOf(entry)
      .filter((boxes) => answered || boxes.some(({ key }) => differs(recorded.values, now.values, key)))
      .flatMap((boxes) => readSubject(field, entry, boxes, recorded, now, errors));
  });
}

const differs = (one: Record<string, string>, other: Record<string, string>, key: string): boolean =>
  (one[key] ?? '').trim() !== (other[key] ?? '').trim();

function readSubject(
  field: Field,
  { code, method }: FieldEntry,
  boxes: readonly Entry[],
  recorded: Boxes,
  now: Boxes,
  errors: Errors,
): Reading[] {
  const filled = boxes.filter(({ key }) => (now.values[key] ?? '').trim() !== '');
  const [first] = boxes;
  if (filled.length === 0) {
    const wasRecorded = boxes.some(({ key }) => (recorded.values[key] ?? '') !== '');
    if (first && wasRecorded) errors[first.key] = stageWords.notEmptied;
    return [];
  }
  const answers: Record<string, string> = {};
  for (const { key, stored, required } of method) {
    const answer = now.values[stored] ?? '';
    if (answer) answers[key] = answer;
    else if (required) errors[stored] = stageWords.methodMissing;
  }
  return filled.flatMap((box): Reading[] => {
    const read = readValue(field, now.values[box.key] ?? '');
    if ('error' in read) {
      errors[box.key] = read.error;
      return [];
    }
    return [
      {
        code,
        value: read.value,
        ...(field.unit ? { unit: field.unit } : {}),
        ...(box.arch ? { arch: box.arch } : {}),
        ...(box.side ? { side: box.side } : {}),
        ...(box.region ? { region: box.region } : {}),
        ...(Object.keys(answers).length > 0 ? { method: answers } : {}),
      },
    ];
  });
}

function readValue(field: Field, text: string): { value: Reading['value'] } | { error: string } {
  if (field.kind === 'boolean') return { value: text === 'true' };
  if (field.kind === 'enum' || field.kind === 'text') return { value: text.trim() };
  const value = typedNumber(text);
  if (value === null) return { error: field.kind === 'count' ? stageWords.notWhole : stageWords.notANumber };
  if (field.kind === 'count' && (!Number.isInteger(value) || value < 0)) return { error: stageWords.notWhole };
  if (field.plausible && (value < field.plausible.min || value > field.plausible.max)) {
    return { error: asksAgain(field.plausible, value, field.unit ?? '') };
  }
  return { value };
}

/** A value that no body has; ten times as much that would do was probably read in centimetres, and is asked about. */
function asksAgain({ min, max }: NonNullable<Field['plausible']>, value: number, unit: string): string {
  const said = stageWords.plausible(min, max, unit);
  const inMm = Math.round(value * 1e7) / 1e6;
  const isCentimetres = unit === 'mm' && value !== 0 && inMm >= min && inMm <= max;
  return isCentimetres ? `${said} ${stageWords.centimetres(inMm)}` : said;
}

function readChecklist(view: StageView, recorded: Boxes, now: Boxes, errors: Errors): RecordCapture['checklist'] {
  const checklist: RecordCapture['checklist'] = {};
  for (const { code, counted } of view.checklist) {
    if (!counted) {
      const done = now.ticks[code] ?? false;
      if (done !== (recorded.ticks[code] ?? false)) checklist[code] = done;
    } else if (differs(recorded.counts, now.counts, code)) {
      const n = typedNumber(now.counts[code] ?? '');
      if (n === null || !Number.isInteger(n) || n < 0) errors[`checklist|${code}`] = stageWords.countMissing;
      else checklist[code] = n;
    }
  }
  return checklist;
}
