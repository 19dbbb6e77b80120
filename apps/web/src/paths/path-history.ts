import type { TreatmentPath } from '@archwright/protocol';

/** A path while it is changed, with what it was before each change. */
export interface PathHistory {
  readonly path: TreatmentPath;
  readonly before: readonly TreatmentPath[];
  /** The field that the last change was typed into; null when it was no typing. */
  readonly typedIn: string | null;
}

export const begun = (path: TreatmentPath): PathHistory => ({ path, before: [], typedIn: null });

/** What is typed into one field in one go is one change: nobody takes a word back letter by letter. */
export function changedTo(history: PathHistory, path: TreatmentPath, typedIn: string | null): PathHistory {
  const goesOn = typedIn !== null && typedIn === history.typedIn;
  return { path, before: goesOn ? history.before : [...history.before, history.path], typedIn };
}

export function undone(history: PathHistory): PathHistory {
  const path = history.before.at(-1);
  return path === undefined ? history : { path, before: history.before.slice(0, -1), typedIn: null };
}
