import type { TreatmentPath } from '@archwright/protocol';
import type { Change } from './path-change.js';
import type { DraftFault } from './path-draft.js';
import { keyOf, type Choice, type PartRef } from './path-parts.js';

/** A path on the screen where it is changed: what the panels of its parts read, and how they change it. */
export interface PathEditing {
  readonly path: TreatmentPath;
  readonly faults: readonly DraftFault[];
  /** What can be asked of the practice: what it has, and what paths name already. */
  readonly skills: readonly Choice[];
  readonly kits: readonly Choice[];
  readonly workCentres: readonly Choice[];
  /** @param typedIn the field that is typed into: what is typed in one go is undone in one */
  readonly change: (next: TreatmentPath, typedIn?: string) => void;
  /** Opens a part and goes there. */
  readonly choose: (part: PartRef) => void;
}

/** One part of a path that is being changed. */
export interface PartEditing {
  readonly editing: PathEditing;
  readonly part: PartRef;
}

export function changeField({ editing, part }: PartEditing, field: string, change: Change): void {
  editing.change(change(editing.path), `${keyOf(part)}.${field}`);
}

/** What is wrong with a field of a part; undefined when nothing is. */
export function errorOf({ editing, part }: PartEditing, field: string): string | undefined {
  return editing.faults.find((fault) => keyOf(fault.part) === keyOf(part) && fault.field === field)?.words;
}

/** Whether something is wrong with one of these fields, or within one. */
export function hasError({ editing, part }: PartEditing, fields: readonly string[]): boolean {
  return editing.faults.some(
    (fault) =>
      keyOf(fault.part) === keyOf(part) &&
      fields.some((field) => fault.field === field || fault.field.startsWith(`${field}.`)),
  );
}
