import type { RemakeCount, RemakeEntry, RemakeLog } from '@archwright/contracts';
import { dateAndTime, longDate } from '../time/wording.js';
import { addDays } from '../time/zone.js';
import { archWords } from '../words/line.js';
import { enumerated } from '../words/plural.js';
import { remakeLogWords as words } from '../words/remake-log.js';

/** Both are days, the last one included. */
export interface Period {
  from: string;
  until: string;
}

/** How far back the screen looks unless told. Project default: a quarter is long enough to repeat itself. */
const DAYS_SHOWN = 91;
/** As far as the service counts at once. */
const MOST_DAYS = 366;

/** What the address asks for, completed; null where its days are no period that can be counted. */
export function periodOf(chosen: Partial<Record<'from' | 'until', string | undefined>>, today: string): Period | null {
  const until = chosen.until ?? today;
  const period = { from: chosen.from ?? addDays(until, 1 - DAYS_SHOWN), until };
  return isPeriod(period) ? period : null;
}

export const isPeriod = ({ from, until }: Period): boolean =>
  from !== '' && until !== '' && from <= until && until < addDays(from, MOST_DAYS);

export const logSentence = ({ remakes, cases }: RemakeLog, { from, until }: Period, today: string): string =>
  words.sentence(remakes, cases, longDate(from, today), longDate(until, today));

/** One bar and one row of the table: they show the same. */
export interface CountRow {
  key: string;
  title: string;
  remakes: number;
  byCheck: number;
  cases: number;
  /** Of the longest bar; 0 to 1. */
  share: number;
  /** What its link does. */
  link: string;
}

/** @param counts the most frequent first */
export function countRows(counts: readonly RemakeCount[]): CountRow[] {
  const most = counts[0]?.remakes ?? 1;
  return counts.map((count) => ({
    ...count,
    share: count.remakes / most,
    link: words.showThese(count.title, count.remakes),
  }));
}

/** What the picture shows, for those who can't see it. */
export const pictureWords = (title: string, rows: readonly CountRow[]): string =>
  words.pictureOf(title, enumerated(rows.map((row) => words.bar(row.title, row.remakes))));

export interface EntryRow {
  id: string;
  caseId: string;
  caseNumber: string;
  cause: string;
  /** What was found, in the check's words; null where nothing may be shown. */
  reason: string | null;
  facts: string[];
}

export function entryRow(entry: RemakeEntry, zone: string, today: string): EntryRow {
  const { alertId, caseId, caseNumber, causeTitle, reason, foundAt, foundBy, origin, arches, discards } = entry;
  return {
    id: alertId,
    caseId,
    caseNumber,
    cause: causeTitle,
    reason: reason === causeTitle ? null : reason,
    facts: [
      `${words.found(foundAt)} ${words.foundBy[foundBy]}`,
      words.back(words.entry(origin, archWords(arches))),
      ...(discards.length > 0 ? [words.discarded(enumerated(discards))] : []),
      words.accepted(dateAndTime(entry.acceptedAt, zone, today)),
    ],
  };
}

/** Heading of the list: of everything, or of what was chosen above. */
export function listTitle(
  { causes, origins }: Pick<RemakeLog, 'causes' | 'origins'>,
  { cause, origin }: Partial<Record<'cause' | 'origin', string | undefined>>,
): string {
  const titleIn = (counts: readonly RemakeCount[], key: string | undefined) =>
    key === undefined ? undefined : (counts.find((count) => count.key === key)?.title ?? key);
  const [one, other] = [titleIn(causes, cause), titleIn(origins, origin)];
  if (one !== undefined && other !== undefined) return words.listOf(words.both(one, other));
  const only = one ?? other;
  return only === undefined ? words.listTitle : words.listOf(only);
}
