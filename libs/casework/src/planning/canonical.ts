import { createHash } from 'node:crypto';

/** The same text for equal values, whatever the order in which their fields were written. Undefined fields are left out. */
function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const fields = Object.entries(value)
      .filter(([, field]) => field !== undefined)
      .sort(([one], [other]) => (one < other ? -1 : 1))
      .map(([name, field]) => `${JSON.stringify(name)}:${canonicalJson(field)}`);
    return `{${fields.join(',')}}`;
  }
  return JSON.stringify(value ?? null);
}

/** SHA-256 of a value's canonical JSON, in hex. */
export function hashOf(value: unknown): string {
  return createHash('sha256').update(canonicalJson(value)).digest('hex');
}
