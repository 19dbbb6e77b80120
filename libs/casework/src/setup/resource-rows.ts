import { Resource } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';

export type ResourceState = Pick<Resource, 'label' | 'version'> & { readonly isRetired: boolean };

/** Label, version and use of resources by id. */
export async function resourceStates(
  tx: EntityManager,
  kinds: Resource['kind'][],
): Promise<Map<string, ResourceState>> {
  const rows = await tx.findBy(Resource, { kind: In(kinds) });
  return new Map(
    rows.map(({ id, label, version, retiredAt }) => [id, { label, version, isRetired: retiredAt !== null }]),
  );
}

/** The state of a resource whose row is known to be there, since its own table refers to it. */
export function stateOf(states: ReadonlyMap<string, ResourceState>, id: string): ResourceState {
  const state = states.get(id);
  if (state === undefined) throw new Error(`Resource ${id} is missing, which the database refuses.`);
  return state;
}
