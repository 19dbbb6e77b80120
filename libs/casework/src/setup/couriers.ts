import { Courier } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { KeptHours, replaceHours } from './hours-rows.js';
import type { Keeper, RecordOf } from './keeper.js';

export const courierKeeper: Keeper<'courier'> = {
  table: 'courier',
  fixed: ['clinicId', 'laboratoryId'],
  retires: true,

  async list(tx) {
    const rows = await tx.find(Courier, { order: { name: 'ASC', id: 'ASC' } });
    const kept = await KeptHours.load(tx);
    return rows.map(({ id, version, retiredAt, clinicId, laboratoryId, name, toLabMinutes, toClinicMinutes }) => ({
      id,
      version,
      isRetired: retiredAt !== null,
      record: {
        kind: 'courier',
        ...{ clinicId, laboratoryId, name, toLabMinutes, toClinicMinutes },
        toLab: kept.departures({ courierId: id, direction: 'to-lab' }),
        toClinic: kept.departures({ courierId: id, direction: 'to-clinic' }),
      },
    }));
  },

  async insert(tx, id, record) {
    const { clinicId, laboratoryId, name, toLabMinutes, toClinicMinutes } = record;
    await tx.insert(Courier, { id, clinicId, laboratoryId, name, toLabMinutes, toClinicMinutes });
    await writeTimetables(tx, id, record);
  },

  async replace(tx, id, record) {
    const { name, toLabMinutes, toClinicMinutes } = record;
    await tx.update(Courier, { id }, { name, toLabMinutes, toClinicMinutes });
    await writeTimetables(tx, id, record);
  },
};

async function writeTimetables(
  tx: EntityManager,
  courierId: string,
  { toLab, toClinic }: RecordOf<'courier'>,
): Promise<void> {
  await replaceHours(tx, { courierId, direction: 'to-lab' }, toLab);
  await replaceHours(tx, { courierId, direction: 'to-clinic' }, toClinic);
}
