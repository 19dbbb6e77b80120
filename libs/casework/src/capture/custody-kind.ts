import type { CustodyObject } from '@archwright/records';

/** A path's words for its objects, by what they are as things that change hands; longest first. */
const KINDS: readonly (readonly [part: string, kind: CustodyObject['kind']])[] = [
  ['impression', 'impression'],
  ['jaw-relation-record', 'jaw-relation-record'],
  ['mounting', 'cast'],
  ['cast', 'cast'],
  ['set-up', 'trial-denture'],
  ['trial', 'trial-denture'],
  ['old-denture', 'old-denture'],
  ['denture', 'denture'],
  ['record-base', 'base'],
  ['base', 'base'],
  ['rim', 'rim'],
  ['scan', 'scan-file'],
];

/** The kind under which an object of a path is kept, such as `impression` for `final-impression-upper`. */
export function kindOfObject(code: string): CustodyObject['kind'] {
  return KINDS.find(([part]) => code.includes(part))?.[1] ?? 'other';
}
