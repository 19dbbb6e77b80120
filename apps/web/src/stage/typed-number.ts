/** A number typed with a point or a comma; null when it is none. */
export function typedNumber(text: string): number | null {
  const trimmed = text.trim().replace(',', '.');
  return /^[+-]?\d+(\.\d+)?$/.test(trimmed) ? Number(trimmed) : null;
}
