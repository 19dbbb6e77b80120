import { screenRise, type RiseQuestion } from '@archwright/screening';
import { ScreeningFinding } from '@archwright/records';
import { MoreThan, type EntityManager } from 'typeorm';
import { keepFinding } from './keep-finding.js';

/** What goes back later has been worn, and says little of the bench. Project default. */
const GOES_BACK_WITHIN_DAYS = 30;
const RECENT_MONTHS = 3;
const EARLIER_MONTHS = 24;
/** A rise is told once, not at each look while it lasts. */
const NOT_AGAIN_MS = RECENT_MONTHS * 31 * 86_400_000;

/** A laboratory, or one of its benches, with its finished work and what of it was discarded by a remake. */
type Row = Readonly<
  Record<'recentEvents' | 'recentSize' | 'earlierEvents' | 'earlierSize' | 'unseen', number> &
    Record<'unit' | 'name' | 'laboratoryId', string>
>;

const UNITS = {
  'laboratory-series': { column: 'laboratory_id', name: 'l.name', joined: 'JOIN laboratory l ON l.id = unit' },
  'work-centre-series': {
    column: 'work_centre_id',
    name: `l.name || ', ' || w.name`,
    joined: 'JOIN work_centre w ON w.id = unit JOIN laboratory l ON l.id = w.laboratory_id',
  },
} as const;

/**
 * Holds each laboratory's and each bench's finished work of the last three months beside that of the two years before:
 * one look a month. It says how often work went back, not why.
 */
export async function findRises(tx: EntityManager, nightOn: string, workPerAlarm: number, now: Date): Promise<void> {
  const month = nightOn.slice(0, 7);
  for (const kind of ['laboratory-series', 'work-centre-series'] as const) {
    for (const row of await countWork(tx, kind, `${month}-01`)) {
      const question: RiseQuestion = {
        recent: { events: row.recentEvents, size: row.recentSize },
        earlier: { events: row.earlierEvents, size: row.earlierSize },
        unseen: row.unseen,
      };
      if (question.recent.size === 0 || question.earlier.size === 0) continue;
      const outcome = screenRise(question, workPerAlarm);
      if (outcome.outcome !== 'stands-out') continue;
      const about =
        kind === 'laboratory-series'
          ? { laboratoryId: row.unit }
          : { laboratoryId: row.laboratoryId, workCentreId: row.unit };
      const told = { comparedWith: kind, ...about, foundAt: MoreThan(new Date(now.getTime() - NOT_AGAIN_MS)) };
      if (await tx.existsBy(ScreeningFinding, told)) continue;
      await keepFinding(tx, {
        effect: `rise/${row.unit}/${month}`,
        kind: 'share',
        comparedWith: kind,
        groupSize: question.earlier.size,
        ...about,
        evidence: { ...question, ...outcome },
        sentence: inSentence(row.name, question, outcome),
        foundAt: now,
      });
    }
  }
}

function inSentence(
  name: string,
  { recent, earlier }: RiseQuestion,
  { usual, share }: { readonly usual: number; readonly share: number },
): string {
  return (
    `${name}: of ${String(recent.size)} pieces of work of three months ${String(recent.events)} went back within ` +
    `${String(GOES_BACK_WITHIN_DAYS)} days (${percent(share)}); before it was ${percent(usual)}, ` +
    `${String(earlier.events)} of ${String(earlier.size)}. Why they went back is another question.`
  );
}

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;

/**
 * Work between two visits counts once for each bench that had a part in it. The last month that counts ended so long ago
 * that what would go back has gone back.
 */
function countWork(tx: EntityManager, kind: keyof typeof UNITS, monthOn: string): Promise<Row[]> {
  const { column, name, joined } = UNITS[kind];
  return tx.query(
    `WITH work AS (
       SELECT s.${column} AS unit, s.case_id, s.phase, s.round, max(s.finished_at) AS at,
         bool_or(s.state = 'discarded') AS "isDiscarded"
       FROM lab_step s WHERE s.finished_at IS NOT NULL AND s.${column} IS NOT NULL GROUP BY 1, 2, 3, 4),
     counted AS (
       SELECT unit, at, "isDiscarded" AND EXISTS (
         SELECT FROM remake_alert a WHERE a.case_id = work.case_id AND a.state = 'accepted'
           AND a.raised_at >= work.at AND a.raised_at < work.at + make_interval(days => $2)) AS "wentBack"
       FROM work),
     bound AS (SELECT $1::date - make_interval(days => $2) AS until)
     SELECT unit, ${name} AS name, l.id AS "laboratoryId",
       count(*) FILTER (WHERE "wentBack" AND at >= until - make_interval(months => $3))::integer AS "recentEvents",
       count(*) FILTER (WHERE at >= until - make_interval(months => $3))::integer AS "recentSize",
       count(*) FILTER (WHERE "wentBack" AND at < until - make_interval(months => $3))::integer AS "earlierEvents",
       count(*) FILTER (WHERE at < until - make_interval(months => $3))::integer AS "earlierSize",
       count(*) FILTER (WHERE at >= until - interval '1 month')::integer AS unseen
     FROM counted CROSS JOIN bound ${joined}
     WHERE at < until AND at >= until - make_interval(months => $4)
     GROUP BY unit, ${name}, l.id ORDER BY unit`,
    [monthOn, GOES_BACK_WITHIN_DAYS, RECENT_MONTHS, RECENT_MONTHS + EARLIER_MONTHS],
  );
}
