import type { RemakeCount, RemakeEntry } from '@archwright/contracts';

type Counted = Pick<RemakeEntry, 'caseId' | 'cause' | 'causeTitle' | 'origin' | 'foundBy'>;

/**
 * How often each cause and each origin sent a case back, the most frequent first, equal ones by name. Nothing is counted by
 * person: a count of remakes says as much about who looks closely as about who works badly.
 */
export function countRemakes(entries: readonly Counted[]): { causes: RemakeCount[]; origins: RemakeCount[] } {
  return {
    causes: countBy(entries, ({ cause, causeTitle }) => ({ key: cause, title: causeTitle })),
    origins: countBy(entries, ({ origin }) => ({ key: origin, title: origin })),
  };
}

export const casesOf = (entries: readonly Pick<Counted, 'caseId'>[]): number =>
  new Set(entries.map(({ caseId }) => caseId)).size;

function countBy(
  entries: readonly Counted[],
  named: (entry: Counted) => { key: string; title: string },
): RemakeCount[] {
  const groups = new Map<string, { title: string; entries: Counted[] }>();
  for (const entry of entries) {
    const { key, title } = named(entry);
    const group = groups.get(key) ?? { title, entries: [] };
    group.entries.push(entry);
    groups.set(key, group);
  }
  return [...groups]
    .map(([key, group]) => ({
      key,
      title: group.title,
      remakes: group.entries.length,
      byCheck: group.entries.filter(({ foundBy }) => foundBy === 'check').length,
      cases: casesOf(group.entries),
    }))
    .sort((one, other) => other.remakes - one.remakes || one.title.localeCompare(other.title));
}
