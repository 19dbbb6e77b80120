import { Clinic, UserAccount } from '@archwright/records';
import { KeptHours, replaceHours } from './hours-rows.js';
import type { Keeper } from './keeper.js';

export const clinicKeeper: Keeper<'clinic'> = {
  table: 'clinic',
  fixed: [],
  retires: false,

  async list(tx) {
    const rows = await tx.find(Clinic, { order: { name: 'ASC', id: 'ASC' } });
    const kept = await KeptHours.load(tx);
    return rows.map(({ id, version, name, zone, address, phone }) => ({
      id,
      version,
      isRetired: false,
      record: { kind: 'clinic', name, zone, address, phone, hours: kept.hours({ clinicId: id }) },
    }));
  },

  async insert(tx, id, { name, zone, address, phone, hours }, { actor }) {
    await tx.insert(Clinic, { id, name, zone, address, phone });
    await replaceHours(tx, { clinicId: id }, hours);
    // Who opens a clinic answers for it; an administrator answers for all of them anyway.
    if (actor.userId === null || actor.role === 'administrator') return;
    await tx.update(
      UserAccount,
      { id: actor.userId },
      { clinicIds: [...actor.clinicIds, id], version: () => 'version + 1' },
    );
  },

  async replace(tx, id, { name, zone, address, phone, hours }) {
    await tx.update(Clinic, { id }, { name, zone, address, phone });
    await replaceHours(tx, { clinicId: id }, hours);
  },
};
