import { addDays, startOfDayMs } from '@archwright/calendar';
import type { RemakeEntry, RemakeLog, RemakeLogQuery } from '@archwright/contracts';
import { RequestInvalidError, decodeCursor, pageOf } from '@archwright/platform';
import { Clinic } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { CASE_IN_SCOPE, caseScope } from '../cases/case-access.js';
import { loadChains, type LoadedChain } from '../cases/chain.js';
import { casesOf, countRemakes } from './remake-counts.js';

/** More would be a report of years and not a look at what goes wrong now. Project default. */
const MOST_DAYS = 366;

interface Row {
  readonly alertId: string;
  readonly caseId: string;
  readonly caseNumber: string;
  readonly cause: string;
  readonly reason: string;
  readonly isTyped: boolean;
  readonly foundAtCode: string;
  readonly originCode: string;
  readonly arches: RemakeEntry['arches'];
  readonly discards: string[];
  readonly acceptedAt: Date;
}

/** What was made again in a period in the cases that the actor sees: counted by cause and by origin, and one by one. */
export async function remakeLogOf(tx: EntityManager, actor: Actor, query: RemakeLogQuery): Promise<RemakeLog> {
  const { from, until } = await periodOf(tx, query);
  const rows: Row[] = await tx.query(
    `SELECT a.id AS "alertId", c.id AS "caseId", c.number AS "caseNumber", a.trigger AS cause, a.reason,
       a.raised_by IS NOT NULL AS "isTyped", g.code AS "foundAtCode", a.return_to_stage AS "originCode", a.arches,
       a.discards, a.decided_at AS "acceptedAt"
     FROM remake_alert a JOIN treatment_case c ON c.id = a.case_id JOIN stage g ON g.id = a.stage_id
     WHERE ${CASE_IN_SCOPE} AND a.state = 'accepted' AND a.decided_at >= $3 AND a.decided_at < $4
     ORDER BY a.id DESC`,
    [...caseScope(actor), from, until],
  );
  const chains = await loadChains(tx, [...new Set(rows.map(({ caseId }) => caseId))]);
  const entries = rows.map((row) => entryOf(row, chains.get(row.caseId), actor));
  const { cause, origin, cursor, limit } = query;
  // Ids are made in the order of time, so that they also order the list.
  const after = cursor === undefined ? null : decodeCursor(cursor).id;
  const listed = entries.filter(
    (entry) =>
      (cause === undefined || entry.cause === cause) &&
      (origin === undefined || entry.origin === origin) &&
      (after === null || entry.alertId < after),
  );
  return {
    ...pageOf(listed, limit, ({ alertId }) => ({ sortKey: '', id: alertId })),
    ...countRemakes(entries),
    remakes: entries.length,
    cases: casesOf(entries),
  };
}

/** Dates are the practice's: those of its first clinic. */
async function periodOf(tx: EntityManager, { fromOn, untilOn }: RemakeLogQuery): Promise<{ from: Date; until: Date }> {
  const last = addDays(fromOn, MOST_DAYS - 1);
  if (untilOn < fromOn || untilOn > last) {
    throw new RequestInvalidError([
      { path: 'untilOn', problem: `is ${untilOn}`, accepted: `${fromOn} or later, until ${last}` },
    ]);
  }
  const [clinic] = await tx.find(Clinic, { order: { id: 'ASC' }, take: 1 });
  const zone = clinic?.zone ?? 'UTC';
  return { from: new Date(startOfDayMs(fromOn, zone)), until: new Date(startOfDayMs(addDays(untilOn, 1), zone)) };
}

/** Titles are those of the case's own version of its path: codes of different paths mean different things. */
function entryOf(row: Row, loaded: LoadedChain | undefined, actor: Actor): RemakeEntry {
  const { alertId, caseId, caseNumber, cause, isTyped, foundAtCode, originCode, arches, discards } = row;
  const { stages = [], steps = [], loops = [] } = loaded?.chain ?? {};
  const titleOf = (code: string) => [...stages, ...steps].find((part) => part.code === code)?.title ?? code;
  return {
    alertId,
    caseId,
    caseNumber,
    cause,
    causeTitle: loops.find(({ code }) => code === cause)?.trigger ?? inWords(cause),
    reason: isTyped && actor.role === 'lab' ? null : row.reason,
    foundBy: isTyped ? 'person' : 'check',
    foundAt: titleOf(foundAtCode),
    origin: titleOf(originCode),
    originKind: steps.some(({ code }) => code === originCode) ? 'lab-step' : 'visit',
    originCode,
    arches,
    discards,
    acceptedAt: row.acceptedAt.toISOString(),
  };
}

const inWords = (code: string): string => code.charAt(0).toUpperCase() + code.slice(1).replaceAll('-', ' ');
