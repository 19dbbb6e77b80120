import { Laboratory } from '@archwright/records';
import { KeptHours, replaceHours } from './hours-rows.js';
import type { Keeper } from './keeper.js';

export const laboratoryKeeper: Keeper<'laboratory'> = {
  table: 'laboratory',
  fixed: [],
  retires: false,

  async list(tx) {
    const rows = await tx.find(Laboratory, { order: { name: 'ASC', id: 'ASC' } });
    const kept = await KeptHours.load(tx);
    return rows.map(({ id, version, name, zone, cutOffLocal, closedWeekdays }) => {
      const hours = kept.hours({ laboratoryId: id });
      const record = { kind: 'laboratory' as const, name, zone, cutOffLocal, closedWeekdays, hours };
      return { id, version, isRetired: false, record };
    });
  },

  async insert(tx, id, { name, zone, cutOffLocal, closedWeekdays, hours }) {
    await tx.insert(Laboratory, { id, name, zone, cutOffLocal, closedWeekdays });
    await replaceHours(tx, { laboratoryId: id }, hours);
  },

  async replace(tx, id, { name, zone, cutOffLocal, closedWeekdays, hours }) {
    await tx.update(Laboratory, { id }, { name, zone, cutOffLocal, closedWeekdays });
    await replaceHours(tx, { laboratoryId: id }, hours);
  },
};
