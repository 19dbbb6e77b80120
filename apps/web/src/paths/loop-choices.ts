import { LOOP_TRIGGERS } from '@archwright/measures';
import type { PathLoop, TreatmentPath } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import { loopChoices, workChoices, type Choice } from './path-parts.js';

/** What checks can find and the path has no way back for. */
export const freeTriggers = ({ loops }: TreatmentPath): Choice[] =>
  LOOP_TRIGGERS.filter((trigger) => loops.every(({ code }) => code !== trigger)).map((trigger) => ({
    value: trigger,
    label: words.triggers[trigger],
  }));

/** Where a loop can go back to: anything up to where it is found last. */
export function returnChoices(path: TreatmentPath, { foundAt }: PathLoop): Choice[] {
  const work = workChoices(path);
  const latest = Math.max(...foundAt.map((code) => work.findIndex(({ value }) => value === code)));
  return work.slice(0, latest + 1);
}

/** The loops that can follow one that did not help. */
export const otherLoops = (path: TreatmentPath, code: string): Choice[] =>
  loopChoices(path).filter(({ value }) => value !== code);

/** What happens, with what it starts with when it is chosen. */
export function remedyOf(kind: PathLoop['remedy']['kind'], { foundAt }: PathLoop): PathLoop['remedy'] {
  switch (kind) {
    case 'repeat-in-visit':
      return { kind, tries: 2, minutesEach: 15 };
    case 'return':
      return { kind, to: foundAt[0] ?? '' };
    case 'healing':
    case 'quarantine':
      return { kind };
  }
}
