import { checkPath, treatmentPath, type PathProblem, type TreatmentPath } from '@archwright/protocol';

/** A path while it is changed: always its whole text, of which the fields show a part. */
export interface ReadPath {
  /** Null while the text is no path. */
  readonly path: TreatmentPath | null;
  /** What to mend, each by its part. */
  readonly faults: readonly Pick<PathProblem, 'part' | 'message'>[];
  /** Why the text is no JSON; null when it is. */
  readonly notJson: string | null;
}

export const textOf = (path: TreatmentPath): string => JSON.stringify(path, null, 2);

/** Reads the text of a path as the service does, with every fault by its part. */
export function readPathText(text: string): ReadPath {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (error) {
    return { path: null, faults: [], notJson: error instanceof Error ? error.message : '' };
  }
  const parsed = treatmentPath.safeParse(data);
  if (!parsed.success) {
    const faults = parsed.error.issues.map(({ path, message }) => ({ part: path.map(String).join('.'), message }));
    return { path: null, faults, notJson: null };
  }
  return { path: parsed.data, faults: checkPath(parsed.data), notJson: null };
}

type Change = (path: TreatmentPath) => TreatmentPath;

/** Where a number stands within a path; parts are named by their code. */
export type NumberPlace =
  | { readonly of: 'visit'; readonly code: string; readonly field: 'min' | 'typical' | 'max' }
  | { readonly of: 'lag'; readonly code: string; readonly field: 'min' | 'max' }
  | { readonly of: 'phase'; readonly code: string; readonly field: 'usualMinDays' | 'usualMaxDays' | 'rushDays' };

/**
 * Changes one number. What a practice sets is the practice's: the number's standing says so from then on, and its old
 * source does not stand beside a value that it never gave.
 */
export function withNumber(place: NumberPlace, value: number): Change {
  const own = { standing: 'practice' as const, source: 'Set by the practice' };
  return (path) => {
    switch (place.of) {
      case 'visit':
        return {
          ...path,
          visits: path.visits.map((visit) =>
            visit.code === place.code
              ? { ...visit, chairMinutes: { ...visit.chairMinutes, [place.field]: value, ...own } }
              : visit,
          ),
        };
      case 'lag':
        return {
          ...path,
          lags: path.lags.map((lag) => {
            const span = lag[place.field];
            return lag.code === place.code && span !== null
              ? { ...lag, [place.field]: { ...span, amount: value, ...own } }
              : lag;
          }),
        };
      case 'phase':
        return {
          ...path,
          labPhases: path.labPhases.map((phase) =>
            phase.code === place.code
              ? { ...phase, turnaround: { ...phase.turnaround, [place.field]: value, ...own } }
              : phase,
          ),
        };
    }
  };
}

/** Changes a word of the path itself, or of one of its visits. */
export function withVisit(code: string, change: { title?: string; assistant?: boolean }): Change {
  return (path) => ({
    ...path,
    visits: path.visits.map((visit) => (visit.code === code ? { ...visit, ...change } : visit)),
  });
}
