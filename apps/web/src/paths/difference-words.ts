import { pathDifferences, type PathDifference, type TreatmentPath } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import { captureName } from './measured.js';
import { isListName, kindIn, partName, workName, type PartRef } from './path-parts.js';
import { valueWords } from './value-words.js';

export interface DifferenceRow {
  readonly id: string;
  readonly where: string;
  readonly kind: PathDifference['kind'];
  readonly before: string;
  readonly after: string;
}

/** In what a path differs from another version of it, in words. */
export function differenceRows(before: TreatmentPath, after: TreatmentPath): DifferenceRow[] {
  const rows = new Map<string, DifferenceRow>();
  for (const difference of pathDifferences(before, after).filter(({ at }) => !isProvenance(at))) {
    const whole = wholeOf(difference, before, after);
    const id = `${whole.at.join('.')} ${whole.kind}`;
    if (!rows.has(id)) rows.set(id, rowOf(id, whole, before, after));
  }
  return [...rows.values()];
}

/** Where a value is from changes with the value, and says nothing by itself. */
const isProvenance = (at: readonly string[]): boolean => ['standing', 'source'].includes(at.at(-1) ?? '');

/** Values of several fields that only say something together: a limit, what a gate stands before, what a loop does. */
function wholeOf(difference: PathDifference, before: TreatmentPath, after: TreatmentPath): PathDifference {
  const { at } = difference;
  const end = at.findIndex((field, index) => {
    if (field === 'remedy' || field === 'requires') return true;
    if (field === 'before') return at[index - 2] === 'gates';
    return (field === 'min' || field === 'max') && at[index - 1] !== 'chairMinutes';
  });
  if (end < 0) return difference;
  const short = at.slice(0, end + 1);
  return { at: short, kind: 'changed', before: valueAt(before, short), after: valueAt(after, short) };
}

function valueAt(root: unknown, at: readonly string[]): unknown {
  return at.reduce<unknown>((value, name) => {
    if (Array.isArray(value)) return (value as { code?: unknown }[]).find(({ code }) => code === name);
    return typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>)[name] : undefined;
  }, root);
}

function rowOf(
  id: string,
  { at, kind, before, after }: PathDifference,
  old: TreatmentPath,
  path: TreatmentPath,
): DifferenceRow {
  const [was, is] =
    Array.isArray(before) && Array.isArray(after) && kind === 'changed' ? apartOf(before, after) : [before, after];
  return {
    id,
    where: whereWords(at, old, path),
    kind,
    before: valueWords(old, at, was),
    after: valueWords(path, at, is),
  };
}

/** Of two lists what only one of them has; both as they are where they differ in their order alone. */
function apartOf(before: readonly unknown[], after: readonly unknown[]): [unknown[], unknown[]] {
  const only = (list: readonly unknown[], other: readonly unknown[]) => {
    const known = new Set(other.map((each) => JSON.stringify(each)));
    return list.filter((each) => !known.has(JSON.stringify(each)));
  };
  const [gone, come] = [only(before, after), only(after, before)];
  return gone.length + come.length === 0 ? [[...before], [...after]] : [gone, come];
}

function whereWords(at: readonly string[], old: TreatmentPath, path: TreatmentPath): string {
  const [list = '', code, ...rest] = at;
  if (!isListName(list) || code === undefined) return fieldsWords(at, old, path);
  const kind = kindIn(list);
  const [within, step, ...ofStep] = rest;
  if (kind === 'phase' && within === 'steps' && step !== undefined) {
    return partAndField({ kind: 'step', code: step }, ofStep, old, path);
  }
  return partAndField({ kind, code }, rest, old, path);
}

function partAndField(part: PartRef, rest: readonly string[], old: TreatmentPath, path: TreatmentPath): string {
  const known = partName(path, part);
  const name = words.chosen(words.kinds[part.kind], known === part.code ? partName(old, part) : known);
  return rest.length === 0 ? name : words.fieldAt(name, fieldsWords(rest, old, path));
}

/** Fields in words; lines of a list are named by what they say. */
function fieldsWords(fields: readonly string[], old: TreatmentPath, path: TreatmentPath): string {
  return fields
    .map((field, index) => lineWords(fields[index - 1], field, old, path) ?? fieldWords(field))
    .reduce(words.fieldAt);
}

const fieldWords = (field: string): string =>
  field in words.fields ? words.fields[field as keyof typeof words.fields] : field;

function lineWords(list: string | undefined, code: string, old: TreatmentPath, path: TreatmentPath): string | null {
  if (list === 'captures') return captureName(code);
  if (list === 'after') return workName(path, code);
  if (list !== 'checklist') return null;
  const lines = [path, old].flatMap(({ visits }) => visits.flatMap(({ checklist }) => checklist));
  const text = lines.find((line) => line.code === code)?.text.trim() ?? '';
  return text === '' ? code : text;
}
