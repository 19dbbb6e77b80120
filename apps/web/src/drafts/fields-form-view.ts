/** Null for what an earlier version kept. */
export function draftLike<Draft extends { [Field in keyof Draft]: string }>(kept: unknown, empty: Draft): Draft | null {
  if (typeof kept !== 'object' || kept === null) return null;
  const texts = new Map(Object.entries(kept));
  return Object.keys(empty).every((field) => typeof texts.get(field) === 'string') ? (kept as Draft) : null;
}

/**
 * What the service refused, each beside the field that it is about.
 *
 * @param refused what is wrong, by path of the call
 * @param paths of fields that the call names otherwise
 * @returns whether something was refused and all of it has its place, beside what stands there
 */
export function placeRefused<Draft extends object>(
  refused: Readonly<Record<string, string>>,
  fields: Draft,
  paths: Partial<Record<keyof Draft, string>>,
): { byField: Partial<Record<string, string>>; isPlaced: boolean } {
  const named = new Map<string, string>(Object.entries(paths));
  const byField: Partial<Record<string, string>> = {};
  const known = new Set<string>();
  for (const field of Object.keys(fields)) {
    const path = named.get(field) ?? field;
    known.add(path);
    if (refused[path] !== undefined) byField[field] = refused[path];
  }
  const asked = Object.keys(refused);
  return { byField, isPlaced: asked.length > 0 && asked.every((path) => known.has(path)) };
}
