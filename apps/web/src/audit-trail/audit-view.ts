import { auditQuery, type AuditEntryView } from '@archwright/contracts';
import { dateAndTime } from '../time/wording.js';
import { auditWords as words } from '../words/audit.js';
import { apart, spelled } from '../words/plural.js';

/** What is searched for, as the address has it: texts or nothing. */
export interface AuditSearch {
  by?: string | undefined;
  deed?: string | undefined;
  case?: string | undefined;
  from?: string | undefined;
  until?: string | undefined;
}

/** The query that a search stands for, or what is wrong with it by field. */
export function readSearch(search: AuditSearch): { query: Record<string, string> } | { errors: AuditErrors } {
  const wanted = {
    actorId: search.by,
    action: search.deed,
    caseNumber: search.case,
    fromOn: search.from,
    untilOn: search.until,
  };
  const query = Object.fromEntries(Object.entries(wanted).filter(([, text]) => text !== undefined && text !== ''));
  const parsed = auditQuery.safeParse(query);
  const wrong = new Set(parsed.success ? [] : parsed.error.issues.map(({ path }) => path[0]));
  const errors: AuditErrors = {
    ...(wrong.has('action') ? { deed: words.need.deed } : {}),
    ...(wrong.has('caseNumber') ? { case: words.need.case } : {}),
    ...(search.from && search.until && search.until < search.from ? { until: words.need.until } : {}),
  };
  return Object.keys(errors).length > 0 ? { errors } : { query: query as Record<string, string> };
}

export type AuditErrors = Partial<Record<keyof AuditSearch, string>>;

export interface AuditRow {
  readonly id: string;
  readonly at: string;
  readonly by: string;
  readonly deed: string;
  readonly about: string;
  readonly caseId: string | null;
  readonly details: string;
}

export const auditRows = (entries: readonly AuditEntryView[], zone: string, today: string): AuditRow[] =>
  entries.map(({ id, at, by, action, subjectKind, subjectName, caseId, caseNumber, details }) => ({
    id,
    at: dateAndTime(at, zone, today),
    by: by ?? words.service,
    deed: spelled(action),
    about: aboutOf(caseNumber ?? subjectName, spelled(subjectKind)),
    caseId,
    details: apart(
      Object.entries(details).map(
        ([name, value]) => `${name}: ${typeof value === 'string' ? value : JSON.stringify(value)}`,
      ),
    ),
  }));

const aboutOf = (name: string | null, kind: string): string => (name === null ? kind : words.about(name, kind));
