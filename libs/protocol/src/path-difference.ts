import type { TreatmentPath } from './path-schema.js';

/** One thing in which two versions of a path differ. */
export interface PathDifference {
  /** Where, such as `visits`, `V3`, `chairMinutes`, `typical`; parts are named by their code. */
  readonly at: readonly string[];
  readonly kind: 'added' | 'removed' | 'changed' | 'moved';
  /** What stands there, of an order the codes; undefined on the side on which there is nothing. */
  readonly before: unknown;
  readonly after: unknown;
}

type Fields = Readonly<Record<string, unknown>>;

/**
 * In what a path differs from another version of it, in the order of the document. Parts with a code are the same part
 * wherever they stand; a list of them whose common parts changed their order is reported once. The number of the version
 * is no difference.
 */
export function pathDifferences(before: TreatmentPath, after: TreatmentPath): PathDifference[] {
  return differencesOf({ ...before, version: 0 }, { ...after, version: 0 }, []);
}

function differencesOf(before: unknown, after: unknown, at: readonly string[]): PathDifference[] {
  if (sameText(before, after)) return [];
  if (isCodedList(before) && isCodedList(after)) return ofCodedLists(before, after, at);
  if (isFields(before) && isFields(after)) {
    const names = [...new Set([...Object.keys(before), ...Object.keys(after)])];
    return names.flatMap((name) => differencesOf(before[name], after[name], [...at, name]));
  }
  return [entry('changed', at, before, after)];
}

function ofCodedLists(before: readonly Coded[], after: readonly Coded[], at: readonly string[]): PathDifference[] {
  const codesBefore = before.map(({ code }) => code);
  const codesAfter = after.map(({ code }) => code);
  const common = codesBefore.filter((code) => codesAfter.includes(code));
  const commonAfter = codesAfter.filter((code) => codesBefore.includes(code));
  const moved = sameText(common, commonAfter) ? [] : [entry('moved', at, common, commonAfter)];
  const removed = before
    .filter(({ code }) => !codesAfter.includes(code))
    .map((part) => entry('removed', [...at, part.code], part, undefined));
  const rest = after.flatMap((part) => {
    const known = before.find(({ code }) => code === part.code);
    const here = [...at, part.code];
    return known === undefined ? [entry('added', here, undefined, part)] : differencesOf(known, part, here);
  });
  return [...moved, ...removed, ...rest];
}

interface Coded extends Fields {
  readonly code: string;
}

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A list of parts, each with its own code; of predecessors of a step the code may come twice, so those are plain values. */
function isCodedList(value: unknown): value is readonly Coded[] {
  if (!Array.isArray(value)) return false;
  const codes = value.map((part: unknown) => (isFields(part) ? part.code : undefined));
  return codes.every((code) => typeof code === 'string') && new Set(codes).size === codes.length;
}

function entry(kind: PathDifference['kind'], at: readonly string[], before: unknown, after: unknown): PathDifference {
  return { kind, at, before, after };
}

const sameText = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);
