/** Words in another language for the texts that come with the product, by their English text, in groups to find them by. */
export type Delivered = Readonly<Record<string, Readonly<Record<string, string>>>>;

/**
 * Reads delivered texts in another language. A text that did not come with the product, such as the title that a practice
 * gave a path of its own, stays as it was written.
 */
export function readerOf(groups: Delivered): (text: string) => string {
  const known = new Map(Object.values(groups).flatMap(Object.entries<string>));
  const jaws = groups['jaws'] ?? {};
  // The title of a case says which path each jaw is treated by.
  const ofJaw = (part: string): string => {
    const [, jaw = '', rest = ''] = /^([^:]+): (.+)$/.exec(part) ?? [];
    const told = jaws[jaw];
    return told === undefined ? part : `${told}: ${known.get(rest) ?? rest}`;
  };
  // Visits that are held as one have their titles one after the other.
  return (text) =>
    known.get(text) ??
    text
      .split('; ')
      .map((part) => known.get(part) ?? ofJaw(part))
      .join('; ');
}
