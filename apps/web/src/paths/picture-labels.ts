import type { LabPhase, PathLag } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import { spanWords } from './paths-view.js';

/** As many letters as a box of the drawing holds. */
const FITS = 20;

export const shortened = (text: string): string =>
  text.length > FITS ? `${text.slice(0, FITS - 1).trimEnd()}…` : text;

/** How long something may wait, as short as it can be said. */
export function waitLabel(lag: PathLag | undefined): string {
  if (lag === undefined) return '';
  const { min, max } = lag;
  if (min !== null && max !== null) return `${spanWords(min)} – ${spanWords(max)}`;
  if (min !== null) return `≥ ${spanWords(min)}`;
  return max === null ? words.limit.none : `≤ ${spanWords(max)}`;
}

export function turnaroundLabel({ turnaround: { usualMinDays, usualMaxDays } }: LabPhase): string {
  return words.days(usualMinDays, usualMaxDays);
}
