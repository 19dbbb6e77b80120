import type { CustodyObject } from '@archwright/records';
import type { EntityManager } from 'typeorm';

/** Ids of those that were declared disinfected since they came to where they are. */
export async function declaredObjects(
  tx: EntityManager,
  objects: readonly Pick<CustodyObject, 'id'>[],
): Promise<Set<string>> {
  const rows: { id: string }[] = await tx.query(
    `SELECT o.id FROM custody_object o WHERE o.id = ANY ($1::uuid[]) AND EXISTS (
       SELECT FROM disinfection_record r
       WHERE r.object_id = o.id AND (o.arrived_at IS NULL OR r.disinfected_at >= o.arrived_at))`,
    [objects.map(({ id }) => id)],
  );
  return new Set(rows.map(({ id }) => id));
}
