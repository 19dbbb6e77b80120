import { Clinic, Device } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { SetupRefusedError, type Keeper } from './keeper.js';

/** What a clinic measures with. Readings stay with the device they were taken with, so that it never becomes another. */
export const deviceKeeper: Keeper<'device'> = {
  table: 'device',
  fixed: ['clinicId', 'measures'],
  retires: true,

  async list(tx) {
    const rows = await tx.find(Device, { order: { name: 'ASC', id: 'ASC' } });
    return rows.map(({ id, version, retiredAt, clinicId, name, measures }) => ({
      ...{ id, version, isRetired: retiredAt !== null },
      record: { kind: 'device', clinicId, name, measures },
    }));
  },

  async insert(tx, id, { clinicId, name, measures }) {
    await requireFreeName(tx, id, clinicId, name);
    await tx.insert(Device, { id, clinicId, name, measures });
  },

  async replace(tx, id, { clinicId, name }) {
    await requireFreeName(tx, id, clinicId, name);
    await tx.update(Device, { id }, { name });
  },
};

/** Two devices of one name would be one to those who choose. Who names devices of a clinic waits at it. */
async function requireFreeName(tx: EntityManager, id: string, clinicId: string, name: string): Promise<void> {
  await tx.findOneOrFail(Clinic, { where: { id: clinicId }, lock: { mode: 'pessimistic_write' } });
  const namesake = await tx.findOneBy(Device, { clinicId, name });
  if (namesake === null || namesake.id === id) return;
  throw new SetupRefusedError(
    `The clinic has a device "${name}" already, perhaps one that is out of use.`,
    'another name, or that device put back into use',
  );
}
