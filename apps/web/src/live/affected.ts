import type { ChangeNews } from '@archwright/contracts';

/** Queries that show one record: the kind that they show, by the first word of their key; its id is the second. */
const ONE_RECORD: Readonly<Record<string, string>> = { case: 'case', 'lab-case': 'case', patient: 'patient' };

interface Asked {
  readonly queryKey: readonly unknown[];
  /** `{ isLive: false }` for an answer that stays as it was given, such as offers that somebody reads out. */
  readonly meta?: Readonly<Record<string, unknown>> | undefined;
}

/**
 * Whether what is on a screen may have changed. Lists and boards may change with anything, so that a new screen is live
 * without being named here.
 */
export function isAffected(
  { changes, isEverything }: ChangeNews,
  { queryKey: [subject, shown], meta }: Asked,
): boolean {
  if (subject === 'session' || meta?.['isLive'] === false) return false;
  if (isEverything) return true;
  const own = ONE_RECORD[String(subject)];
  return changes.some(({ kind, id }) => kind !== own || id === shown);
}
