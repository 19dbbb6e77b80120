import { Injectable, type ArgumentMetadata, type PipeTransform } from '@nestjs/common';
import { RequestInvalidError, type FieldProblem } from './validation.js';

/** A database keeps neither NUL nor half of a pair of code units (PostgreSQL, "Character Types" and "JSON Types"). */
export const isStorable = (text: string): boolean => !text.includes('\u0000') && !/\p{Surrogate}/u.test(text);

/** Refuses text that can't be kept, wherever it stands in a body or an address, before any contract looks at it. */
@Injectable()
export class StorableTextPipe implements PipeTransform {
  transform(value: unknown, { type, data }: ArgumentMetadata): unknown {
    if (type === 'custom') return value;
    const errors = problemsIn(value, data ?? '');
    if (errors.length > 0) throw new RequestInvalidError(errors);
    return value;
  }
}

function problemsIn(value: unknown, path: string): FieldProblem[] {
  if (typeof value === 'string') return isStorable(value) ? [] : [unstorable(path)];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => {
    const below = path === '' ? name : `${path}.${name}`;
    return isStorable(name) ? problemsIn(inner, below) : [unstorable(path)];
  });
}

const unstorable = (path: string): FieldProblem => ({
  path,
  problem: 'holds a character that can not be kept',
  accepted: 'text of whole characters, without NUL',
});
