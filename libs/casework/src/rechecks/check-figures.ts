import type { CheckFigures } from '@archwright/contracts';
import { CHECK_RULES, JUDGEMENT_NOTE } from '@archwright/measures';
import type { EntityManager } from 'typeorm';

interface Counted {
  readonly rule: string;
  readonly judged: number;
  readonly failed: number;
  readonly setAside: number;
  readonly wentOn: number;
  readonly dismissed: number;
}

/** Nothing here knows who did it: a count per rule says whether the rule is right, not whether a person is. */
const COUNTS = `
  WITH verdict AS (SELECT id, stage_id, split_part(rule, '/', 1) AS rule, verdict FROM check_verdict),
    judged AS (
      SELECT rule, count(DISTINCT stage_id)::int AS judged,
        (count(DISTINCT stage_id) FILTER (WHERE verdict = 'fail'))::int AS failed
      FROM verdict GROUP BY rule),
    set_aside AS (SELECT unnest(rules) AS rule, count(*)::int AS n FROM gate_override GROUP BY 1),
    went_on AS (
      SELECT v.rule, count(*)::int AS n FROM finding_pause p JOIN verdict v ON v.id = p.check_verdict_id
      WHERE p.state = 'go-on' GROUP BY 1),
    dismissed AS (
      SELECT v.rule, count(*)::int AS n FROM remake_alert a JOIN verdict v ON v.id = a.check_verdict_id
      WHERE a.state = 'dismissed' AND a.decided_by IS NOT NULL GROUP BY 1)
  SELECT j.rule, j.judged, j.failed, coalesce(s.n, 0) AS "setAside", coalesce(w.n, 0) AS "wentOn",
    coalesce(d.n, 0) AS dismissed
  FROM judged j LEFT JOIN set_aside s USING (rule) LEFT JOIN went_on w USING (rule) LEFT JOIN dismissed d USING (rule)`;

/** How often each rule failed and was set aside; every rule there is, those that never spoke with zeros. */
export async function viewCheckFigures(tx: EntityManager): Promise<CheckFigures> {
  const counted = await tx.query<Counted[]>(COUNTS);
  return {
    items: CHECK_RULES.map(({ code, name, version }) => {
      const own = counted.find(({ rule }) => rule === code);
      return {
        rule: code,
        name,
        version,
        stagesJudged: own?.judged ?? 0,
        stagesFailed: own?.failed ?? 0,
        setAside: own?.setAside ?? 0,
        wentOn: own?.wentOn ?? 0,
        alertsDismissed: own?.dismissed ?? 0,
      };
    }),
    note: JUDGEMENT_NOTE,
  };
}
