import type { RecordCapture, StageView } from '@archwright/contracts';
import { PARTS_IN } from '@archwright/protocol';

type Reading = RecordCapture['readings'][number];
type Field = StageView['fields'][number];

/** Answers of an uneventful visit, where the middle of the usual range or the first choice would not be one. */
const ordinary: Record<string, Reading['value']> = {
  'vertical-dimension-at-rest': 68,
  'occlusal-vertical-dimension': 65,
  'sibilant-test': 'no-contact',
  'closest-speaking-space': 1.5,
  'cawood-howell-class': '3',
  'newton-stomatitis': '0',
  'tracing-risk-explained': true,
  'sore-spots': 0,
};

/** Values for every field that a gate of the stage asks for; `given` replaces the ordinary answers. */
export function requiredReadings(stage: StageView, given: Record<string, Reading['value']> = {}): Reading[] {
  return stage.fields
    .filter((field) => field.required || field.code in given || isExplained(stage, field))
    .flatMap((field) => readingsOf(field, given));
}

/** Explained before any part of a tracing set is counted in. */
const isExplained = ({ checklist }: StageView, { code }: Field): boolean =>
  code === 'tracing-risk-explained' && checklist.some((line) => line.code === PARTS_IN);

function readingsOf(field: Field, given: Record<string, Reading['value']>): Reading[] {
  const value = given[field.code] ?? ordinary[field.code] ?? typicalValue(field);
  const method = Object.fromEntries(field.method.map(({ key, options }) => [key, options[0] ?? '']));
  const reading: Reading = {
    code: field.code,
    value,
    ...(field.unit === null || typeof value !== 'number' ? {} : { unit: field.unit }),
    ...(field.method.length === 0 ? {} : { method }),
  };
  const copies = Array.from({ length: field.readings }, () => reading);
  return copies
    .flatMap((copy) => spread(field.arches, (arch) => ({ ...copy, arch })) ?? [copy])
    .flatMap((copy) => spread(field.sides, (side) => ({ ...copy, side })) ?? [copy])
    .flatMap((copy) => spread(field.regions, (region) => ({ ...copy, region })) ?? [copy]);
}

function spread<Item>(items: readonly Item[], make: (item: Item) => Reading): Reading[] | undefined {
  return items.length === 0 ? undefined : items.map(make);
}

function typicalValue(field: Field): Reading['value'] {
  if (field.kind === 'boolean') return false;
  if (field.choices[0] !== undefined) return field.choices[0].code;
  const range = field.usual ?? field.plausible;
  return range === null ? 0 : Math.round((range.min + range.max) / 2);
}

/** Every checklist line done; as many parts taken out as were put in. */
export function completeChecklist(stage: StageView): RecordCapture['checklist'] {
  return Object.fromEntries(stage.checklist.map((line) => [line.code, line.counted ? 4 : true]));
}
