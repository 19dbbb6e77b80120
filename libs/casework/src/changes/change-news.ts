import type { ChangeNews } from '@archwright/contracts';
import { readInOrganisation, type ChangesSince } from '@archwright/records';
import type { DataSource } from 'typeorm';
import type { Actor } from '../actor.js';
import { ownWork } from './own-work.js';

/** What one person's screens are told of the changes in their organisation; a laboratory hears of its own work alone. */
export async function changeNewsFor(db: DataSource, actor: Actor, { changes }: ChangesSince): Promise<ChangeNews> {
  if (changes === null) return { changes: [], isEverything: true };
  if (actor.role !== 'lab' || changes.length === 0) return { changes: [...changes], isEverything: false };
  const own = await readInOrganisation(db, actor.organisationId, (tx) => ownWork(tx, actor, changes));
  return { changes: own, isEverything: false };
}
