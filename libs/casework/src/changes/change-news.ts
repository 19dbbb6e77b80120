import type { ChangeNews } from '@archwright/contracts';
import type { ChangesSince } from '@archwright/records';
import type { Actor } from '../actor.js';

/** A laboratory has no screen that shows these, and is told nothing about people. */
const NOT_FOR_A_LABORATORY: ReadonlySet<string> = new Set([
  'patient',
  'patient-caution',
  'call-task',
  'screening-finding',
]);

/** What one person's screens are told of the changes in their organisation. */
export function changeNewsFor(actor: Actor, { changes }: ChangesSince): ChangeNews {
  if (changes === null) return { changes: [], isEverything: true };
  const isHeard = (kind: string): boolean => actor.role !== 'lab' || !NOT_FOR_A_LABORATORY.has(kind);
  return { changes: changes.filter(({ kind }) => isHeard(kind)), isEverything: false };
}
