import { screenShares, type UnitCount } from '@archwright/screening';
import { Laboratory } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import { keepFinding } from './keep-finding.js';

/**
 * Compares the laboratories by the share of their cases that had to go back, over the twelve months before the month of
 * the night: one look a month, whatever the number of nights. It says how often, not why.
 */
export async function compareLaboratories(
  tx: EntityManager,
  nightOn: string,
  laboratoriesPerAlarm: number,
  now: Date,
): Promise<void> {
  const month = nightOn.slice(0, 7);
  const shares = screenShares(await countRemakes(tx, `${month}-01`), laboratoriesPerAlarm);
  const names = await namesOf(
    tx,
    shares.map(({ unit }) => unit),
  );
  for (const share of shares) {
    if (share.outcome !== 'stands-out') continue;
    const { unit: laboratoryId, events, size, units, centre, shrunk } = share;
    await keepFinding(tx, {
      effect: `share/${laboratoryId}/${month}`,
      kind: 'share',
      comparedWith: 'laboratories',
      groupSize: units,
      laboratoryId,
      evidence: share,
      sentence:
        `${names.get(laboratoryId) ?? ''}: ${String(events)} of ${String(size)} cases went back in twelve months; over ` +
        `${String(units)} laboratories it is ${percent(centre)}. Allowing for its number of cases: ${percent(shrunk)}. ` +
        'Why they went back is another question.',
      foundAt: now,
    });
  }
}

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;

/** Cases with finished work of each laboratory, and those of them that an accepted alert sent back afterwards. */
function countRemakes(tx: EntityManager, until: string): Promise<UnitCount[]> {
  return tx.query(
    `SELECT s.laboratory_id AS unit, count(DISTINCT s.case_id)::integer AS size,
       count(DISTINCT a.case_id)::integer AS events
     FROM lab_step s LEFT JOIN remake_alert a
       ON a.case_id = s.case_id AND a.state = 'accepted' AND a.raised_at >= s.finished_at AND a.raised_at < $1::date
     WHERE s.laboratory_id IS NOT NULL AND s.finished_at >= $1::date - interval '1 year' AND s.finished_at < $1::date
     GROUP BY s.laboratory_id ORDER BY s.laboratory_id`,
    [until],
  );
}

async function namesOf(tx: EntityManager, ids: readonly string[]): Promise<Map<string, string>> {
  const laboratories = await tx.findBy(Laboratory, { id: In([...ids]) });
  return new Map(laboratories.map(({ id, name }) => [id, name]));
}
