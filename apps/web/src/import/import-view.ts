import { MOST_FILE_BYTES, type ImportedCalendar, type ImportedPatientTable } from '@archwright/contracts';
import { dateAndTime } from '../time/wording.js';
import { importWords as words } from '../words/import.js';
import { enumerated } from '../words/plural.js';

export const isFit = (file: { size: number } | null): boolean =>
  file !== null && file.size > 0 && file.size <= MOST_FILE_BYTES;

export interface TableView {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly { id: string; head: string; cells: readonly string[] }[];
}

export interface OutcomeView {
  readonly tone: 'plain' | 'go' | 'caution';
  readonly sentences: readonly string[];
  /** Whether repairs are looked for from now on. */
  readonly hasRepairs: boolean;
  /** Those without rows are left out. */
  readonly tables: readonly TableView[];
}

export function patientOutcome(answer: ImportedPatientTable, isTrial: boolean): OutcomeView {
  const { rows, added, updated, unchanged, isWritten, rejectedCount, rejected, ignoredColumns } = answer;
  const state = isWritten ? words.done : isTrial ? words.tried : words.refused;
  const more = rejectedCount - rejected.length;
  return {
    tone: isWritten ? 'go' : isTrial ? 'plain' : 'caution',
    sentences: [
      state,
      words.patientCounts(rows, added, updated, unchanged, rejectedCount),
      ...(ignoredColumns.length > 0 ? [words.ignored(enumerated(ignoredColumns))] : []),
      ...(more > 0 ? [words.more(more)] : []),
    ],
    hasRepairs: false,
    tables: filled({
      title: words.rejectedTitle,
      columns: Object.values(words.rejectedColumns),
      rows: rejected.map(({ line, reason }) => ({
        id: `${String(line)} ${reason}`,
        head: String(line),
        cells: [reason],
      })),
    }),
  };
}

export function calendarOutcome(answer: ImportedCalendar, isTrial: boolean, zone: string, today: string): OutcomeView {
  const { busy, unchanged, gone, conflicts, disturbances, booked, problems } = answer;
  return {
    tone: isTrial ? 'plain' : 'go',
    sentences: [
      isTrial ? words.tried : words.done,
      words.calendarCounts(busy, unchanged, gone, conflicts),
      ...(disturbances > 0 ? [isTrial ? words.toBeRepaired(disturbances) : words.beingRepaired(disturbances)] : []),
    ],
    hasRepairs: disturbances > 0 && !isTrial,
    tables: filled(
      {
        title: words.bookedTitle,
        columns: Object.values(words.bookedColumns),
        rows: booked.map(({ startsAt, endsAt }) => ({
          id: startsAt,
          head: dateAndTime(startsAt, zone, today),
          cells: [dateAndTime(endsAt, zone, today)],
        })),
      },
      {
        title: words.problemsTitle,
        columns: Object.values(words.problemColumns),
        rows: problems.map(({ line, component, problem }) => ({
          id: `${String(line)} ${problem}`,
          head: String(line),
          cells: [component, problem],
        })),
      },
    ),
  };
}

const filled = (...tables: TableView[]): TableView[] => tables.filter(({ rows }) => rows.length > 0);
