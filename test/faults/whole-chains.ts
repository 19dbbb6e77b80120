import { caseView, type CaseView } from '@archwright/contracts';
import type { DemoService } from './demo-service.js';
import type { StubbornClient } from './stubborn-client.js';

/** Resources taken twice at one time: there must never be any. */
export async function doubleBookings(service: DemoService): Promise<number> {
  const [row] = await service.rows<{ count: number }>(
    `SELECT count(*)::integer AS count FROM occupancy a JOIN occupancy b
       ON a.resource_id = b.resource_id AND a.id < b.id AND a.starts_at < b.ends_at AND a.ends_at > b.starts_at`,
  );
  return row?.count ?? -1;
}

/** Cases of which not exactly what their hold's plan says is booked, or kept, or nothing of it. */
export async function partChains(service: DemoService): Promise<string[]> {
  const cases = await service.rows<{ number: string }>(
    `SELECT c.number FROM treatment_case c
       LEFT JOIN LATERAL (
         SELECT h.state, jsonb_array_length(p.document -> 'plan' -> 'visits') AS visits,
           jsonb_array_length(p.document -> 'plan' -> 'labSteps') AS steps
         FROM hold h JOIN plan p ON p.id = h.plan_id WHERE h.case_id = c.id AND h.state IN ('active', 'confirmed')) planned ON true
       CROSS JOIN LATERAL (
         SELECT count(DISTINCT a.id) FILTER (WHERE a.state = 'booked') AS booked,
           count(DISTINCT a.id) FILTER (WHERE a.state = 'held') AS held
         FROM stage s JOIN appointment_stage k ON k.stage_id = s.id JOIN appointment a ON a.id = k.appointment_id
         WHERE s.case_id = c.id) stands
       CROSS JOIN LATERAL (
         SELECT count(*) FILTER (WHERE l.starts_at IS NOT NULL) AS placed FROM lab_step l WHERE l.case_id = c.id) work
     WHERE stands.booked <> CASE planned.state WHEN 'confirmed' THEN planned.visits ELSE 0 END
       OR stands.held <> CASE planned.state WHEN 'active' THEN planned.visits ELSE 0 END
       OR work.placed <> coalesce(planned.steps, 0)`,
  );
  return cases.map(({ number }) => number);
}

/** What a person was told stands, of those booked chains that can't be read back just so. */
export async function changedChains(client: StubbornClient, booked: readonly CaseView[]): Promise<string[]> {
  const times = ({ stages, labSteps }: CaseView) =>
    JSON.stringify([stages, labSteps].map((list) => list.map(({ id, startsAt, endsAt }) => [id, startsAt, endsAt])));
  const changed: string[] = [];
  for (const told of booked) {
    const stands = await client.get({ method: 'GET', path: `/cases/${told.id}` }, caseView);
    if (times(stands) !== times(told)) changed.push(told.number);
  }
  return changed;
}
