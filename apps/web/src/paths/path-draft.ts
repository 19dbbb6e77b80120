import { checkPath, treatmentPath, type PathProblem, type TreatmentPath } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import { WHOLE, isListName, kindIn, type PartRef } from './path-parts.js';

/** Something to mend before a path can be published. */
export interface DraftFault {
  readonly part: PartRef;
  /** Its field, such as `checklist.2.text`; empty when it is about the part as a whole. */
  readonly field: string;
  readonly words: string;
}

type Issue = NonNullable<ReturnType<typeof treatmentPath.safeParse>['error']>['issues'][number];

/** Everything that is wrong with a path, each fault by its part and field, in words. */
export function faultsOf(path: TreatmentPath): DraftFault[] {
  const issues = treatmentPath.safeParse(path).error?.issues ?? [];
  return [
    ...issues.map((issue) => ({ ...placeOf(path, issue.path), words: issueWords(issue) })),
    ...checkPath(path).map(({ at: { kind, code, field }, fault, values }) => ({
      ...{ part: { kind, code }, field },
      words: faultWords(fault, values),
    })),
  ];
}

function faultWords(fault: PathProblem['fault'], values: PathProblem['values']): string {
  return fault === 'schema' ? words.wanted.other : words.fault(fault, values);
}

function placeOf(path: TreatmentPath, [list, index, ...rest]: readonly PropertyKey[]): Omit<DraftFault, 'words'> {
  const name = String(list);
  if (!isListName(name) || typeof index !== 'number') {
    return {
      part: WHOLE,
      field: [list, index]
        .filter((each) => each !== undefined)
        .map(String)
        .join('.'),
    };
  }
  const [within, at, ...field] = rest;
  if (name === 'labPhases' && within === 'steps' && typeof at === 'number') {
    const code = path.labPhases[index]?.steps[at]?.code ?? '';
    return { part: { kind: 'step', code }, field: field.map(String).join('.') };
  }
  return { part: { kind: kindIn(name), code: path[name][index]?.code ?? '' }, field: rest.map(String).join('.') };
}

function issueWords(issue: Issue): string {
  if (issue.code === 'too_small') {
    if (issue.origin === 'string') return words.wanted.text;
    return issue.origin === 'array' ? words.wanted.some : words.wanted.least(Number(issue.minimum));
  }
  if (issue.code === 'too_big') {
    const most = Number(issue.maximum);
    return issue.origin === 'string' ? words.wanted.shorter(most) : words.wanted.most(most);
  }
  if (issue.code === 'invalid_format') return words.wanted.code;
  return issue.code === 'invalid_type' && issue.expected === 'int' ? words.wanted.whole : words.wanted.other;
}

/** Faults of values: forms make them and show them. Any other says that this is no path. */
const OF_VALUES: readonly Issue['code'][] = ['too_small', 'too_big', 'invalid_format'];

/** Reads a draft that was kept; null for what is no path, as an earlier version of the application kept. */
export function keptPath(kept: unknown): TreatmentPath | null {
  const parsed = treatmentPath.safeParse(kept);
  if (parsed.success) return parsed.data;
  const isDraft = parsed.error.issues.every(
    (issue) => OF_VALUES.includes(issue.code) || (issue.code === 'invalid_type' && issue.expected === 'int'),
  );
  return isDraft ? (kept as TreatmentPath) : null;
}
