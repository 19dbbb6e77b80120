import type { ChangeToothList, ToothListView } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { Organisation, recordAudit, type ToothList } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';

const NONE: ToothList = { shades: [], moulds: [], arrangements: [] };

export async function toothListOf(tx: EntityManager, organisationId: string): Promise<ToothList> {
  const { settings } = await tx.findOneByOrFail(Organisation, { id: organisationId });
  return settings.toothList ?? NONE;
}

export async function viewToothList(tx: EntityManager, { organisationId }: Actor): Promise<ToothListView> {
  const { version, settings } = await tx.findOneByOrFail(Organisation, { id: organisationId });
  return { version, ...(settings.toothList ?? NONE) };
}

/** Keeps the practice's own words for teeth, each once, in the order in which they were given. */
export async function changeToothList(
  tx: EntityManager,
  actor: Actor,
  { version, ...given }: ChangeToothList & { version: number },
  now: Date,
): Promise<ToothListView> {
  const changedBy = personOf(actor, 'The list of teeth is changed by a person.');
  const id = actor.organisationId;
  const organisation = await tx.findOneOrFail(Organisation, { where: { id }, lock: { mode: 'pessimistic_write' } });
  requireVersion(version, organisation.version);
  const once = (words: readonly string[]) => [...new Set(words)];
  const { shades, moulds, arrangements } = given;
  const toothList = { shades: once(shades), moulds: once(moulds), arrangements: once(arrangements) };
  await tx.update(Organisation, { id }, { settings: { ...organisation.settings, toothList }, version: version + 1 });
  await recordAudit(tx, {
    actorId: changedBy,
    action: 'change-tooth-list',
    subjectKind: 'organisation',
    subjectId: id,
    details: toothList,
    at: now,
  });
  return { version: version + 1, ...toothList };
}
