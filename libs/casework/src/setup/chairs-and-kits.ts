import { Chair, Clinic, Kit, Resource } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { SetupRefusedError, type Keeper } from './keeper.js';
import { resourceStates, stateOf } from './resource-rows.js';

export const chairKeeper: Keeper<'chair'> = {
  table: 'resource',
  fixed: ['clinicId'],
  retires: true,

  async list(tx) {
    const states = await resourceStates(tx, ['chair']);
    const rows = await tx.find(Chair, { order: { label: 'ASC', id: 'ASC' } });
    return rows.map(({ id, clinicId, label, wheelchairRoom }) => {
      const { version, isRetired } = stateOf(states, id);
      return { id, version, isRetired, record: { kind: 'chair', clinicId, label, wheelchairRoom } };
    });
  },

  async insert(tx, id, { clinicId, label, wheelchairRoom }) {
    await requireFreeLabel(tx, id, clinicId, label);
    await tx.insert(Resource, { id, kind: 'chair', label });
    await tx.insert(Chair, { id, clinicId, label, wheelchairRoom });
  },

  async replace(tx, id, { clinicId, label, wheelchairRoom }) {
    await requireFreeLabel(tx, id, clinicId, label);
    await tx.update(Resource, { id }, { label });
    await tx.update(Chair, { id }, { label, wheelchairRoom });
  },
};

/** Two chairs of one name would be one to the people who walk to them. Who names chairs of a clinic waits at it. */
async function requireFreeLabel(tx: EntityManager, id: string, clinicId: string, label: string): Promise<void> {
  await tx.findOneOrFail(Clinic, { where: { id: clinicId }, lock: { mode: 'pessimistic_write' } });
  const namesake = await tx.findOneBy(Chair, { clinicId, label });
  if (namesake === null || namesake.id === id) return;
  throw new SetupRefusedError(
    `The clinic has a chair "${label}" already, perhaps one that is out of use.`,
    'another name, or that chair put back into use',
  );
}

export const kitKeeper: Keeper<'kit'> = {
  table: 'resource',
  fixed: ['clinicId'],
  retires: true,

  async list(tx) {
    const states = await resourceStates(tx, ['kit']);
    const rows = await tx.find(Kit, { order: { code: 'ASC', id: 'ASC' } });
    return rows.map(({ id, clinicId, code, reprocessingMinutes }) => {
      const { label, version, isRetired } = stateOf(states, id);
      return { id, version, isRetired, record: { kind: 'kit', clinicId, code, label, reprocessingMinutes } };
    });
  },

  async insert(tx, id, { clinicId, code, label, reprocessingMinutes }) {
    await tx.insert(Resource, { id, kind: 'kit', label });
    await tx.insert(Kit, { id, clinicId, code, reprocessingMinutes });
  },

  async replace(tx, id, { code, label, reprocessingMinutes }) {
    await tx.update(Resource, { id }, { label });
    await tx.update(Kit, { id }, { code, reprocessingMinutes });
  },
};
