import type { LabPhase, PathPartKind, TreatmentPath } from '@archwright/protocol';
import { delivered } from '../words/delivered.js';
import { editorWords as words } from '../words/path-editor.js';

/** A part of a path by its kind and code; the code of the path itself is empty. */
export interface PartRef {
  readonly kind: PathPartKind;
  readonly code: string;
}

export const WHOLE: PartRef = { kind: 'path', code: '' };

/** What each list of a path holds; the steps are in lists of their phases. */
const KINDS = {
  visits: 'visit',
  labPhases: 'phase',
  lags: 'lag',
  gates: 'gate',
  loops: 'loop',
  objects: 'object',
} as const satisfies Partial<Record<keyof TreatmentPath, PathPartKind>>;

export type ListName = keyof typeof KINDS;
export const isListName = (field: string): field is ListName => field in KINDS;
export const kindIn = (list: ListName): (typeof KINDS)[ListName] => KINDS[list];

export interface Choice {
  readonly value: string;
  readonly label: string;
}

const NAMED = {
  visit: ({ visits }) => visits.map(({ code, title }) => ({ code, name: words.coded(code, delivered(title)) })),
  step: ({ labPhases }) => labPhases.flatMap(({ steps }) => steps.map(byTitle)),
  phase: ({ labPhases }) => labPhases.map(({ code, after, before }) => ({ code, name: words.between(after, before) })),
  lag: ({ lags }) => lags.map(byTitle),
  gate: ({ gates }) => gates.map(byTitle),
  loop: ({ loops }) => loops.map(({ code, trigger }) => ({ code, name: delivered(trigger) })),
  object: ({ objects }) => objects.map(byTitle),
} satisfies Record<Exclude<PathPartKind, 'path'>, (path: TreatmentPath) => { code: string; name: string }[]>;

function byTitle({ code, title }: { code: string; title: string }): { code: string; name: string } {
  return { code, name: title.trim() === '' ? code : delivered(title) };
}

/** All parts of a path, kind by kind, as somebody chooses among them. */
export function partGroups(path: TreatmentPath): { kind: PathPartKind; parts: Choice[] }[] {
  const whole = { kind: WHOLE.kind, parts: [{ value: keyOf(WHOLE), label: words.kinds.path }] };
  const groups = (Object.keys(NAMED) as (keyof typeof NAMED)[]).map((kind) => ({
    kind,
    parts: NAMED[kind](path).map(({ code, name }) => ({ value: keyOf({ kind, code }), label: name })),
  }));
  return [whole, ...groups.filter(({ parts }) => parts.length > 0)];
}

/** A part in words; its code where the path does not have it. */
export function partName(path: TreatmentPath, { kind, code }: PartRef): string {
  if (kind === 'path') return words.kinds.path;
  return NAMED[kind](path).find((each) => each.code === code)?.name ?? code;
}

export const hasPart = (path: TreatmentPath, { kind, code }: PartRef): boolean =>
  kind === 'path' || NAMED[kind](path).some((each) => each.code === code);

export const keyOf = ({ kind, code }: PartRef): string => `${kind}/${code}`;

export function partOfKey(key: string): PartRef {
  const [kind = '', code = ''] = key.split('/');
  return kind in NAMED ? { kind: kind as PathPartKind, code } : WHOLE;
}

export const visitChoices = (path: TreatmentPath): Choice[] => choicesOf(NAMED.visit(path));
export const stepChoices = ({ steps }: LabPhase): Choice[] => choicesOf(steps.map(byTitle));
export const objectChoices = (path: TreatmentPath): Choice[] => choicesOf(NAMED.object(path));
export const loopChoices = (path: TreatmentPath): Choice[] => choicesOf(NAMED.loop(path));

/** Visits and laboratory steps in the order of the work. */
export function workChoices(path: TreatmentPath): Choice[] {
  return path.visits.flatMap(({ code, title }) => [
    { value: code, label: words.coded(code, delivered(title)) },
    ...path.labPhases.filter(({ after }) => after === code).flatMap(stepChoices),
  ]);
}

const choicesOf = (parts: readonly { code: string; name: string }[]): Choice[] =>
  parts.map(({ code, name }) => ({ value: code, label: name }));

/** A visit or a step in words. */
export function workName(path: TreatmentPath, code: string): string {
  return workChoices(path).find(({ value }) => value === code)?.label ?? code;
}
