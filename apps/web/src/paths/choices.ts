import { cautions } from '@archwright/protocol';
import type { Choice } from './path-parts.js';

/** Words by their code as somebody chooses among them. */
export const choicesOf = (words: Readonly<Record<string, string>>): Choice[] =>
  Object.entries(words).map(([value, label]) => ({ value, label }));

export const cautionChoices: readonly Choice[] = cautions.map(({ code, hazard }) => ({ value: code, label: hazard }));
