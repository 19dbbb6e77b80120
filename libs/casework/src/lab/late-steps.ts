import { Disturbance } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';

/** Steps that are said to be late and of which the clinic has not decided, each with the end that was said last. */
export async function reportedLate(tx: EntityManager, stepIds: readonly string[]): Promise<Map<string, Date>> {
  const said = await tx.find(Disturbance, {
    where: { labStepId: In([...stepIds]), state: In(['open', 'planned']) },
    order: { id: 'ASC' },
  });
  return new Map(said.flatMap(({ labStepId, endsAt }) => (labStepId === null ? [] : [[labStepId, endsAt] as const])));
}
