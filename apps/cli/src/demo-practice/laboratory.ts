import { BenchPlace, Courier, Laboratory, WorkCentre, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { scenario } from '../demo/scenario.js';
import { idOf, writeResource, type IdsByKey } from './clinics.js';
import type { HoursWriter } from './hours.js';

/** ISO 8601 weekdays on which nobody works in the laboratory: Saturday and Sunday, as its opening says. */
const CLOSED_WEEKDAYS = [6, 7];

export async function writeLaboratory(tx: EntityManager, hours: HoursWriter, clinicIds: IdsByKey): Promise<string> {
  const { name, zone, cutOff, opening, workCentres } = scenario.laboratory;
  const laboratoryId = uuidv7();
  await tx.insert(Laboratory, {
    id: laboratoryId,
    name,
    zone,
    cutOffLocal: cutOff,
    closedWeekdays: CLOSED_WEEKDAYS,
  });
  await hours.write({ laboratoryId }, opening);
  for (const centre of workCentres) await writeWorkCentre(tx, laboratoryId, centre);
  await writeCouriers(tx, hours, laboratoryId, clinicIds);
  return laboratoryId;
}

type Centre = (typeof scenario.laboratory.workCentres)[number];

async function writeWorkCentre(tx: EntityManager, laboratoryId: string, centre: Centre): Promise<void> {
  const batch = 'batch' in centre ? centre.batch : null;
  const workCentreId = uuidv7();
  await tx.insert(WorkCentre, {
    id: workCentreId,
    laboratoryId,
    code: centre.code,
    name: centre.name,
    batchKind: batch?.kind ?? null,
    batchSize: batch?.size ?? null,
  });
  for (let number = 1; number <= centre.places; number++) {
    const label = `${centre.name} ${String(number)}`;
    const id = await writeResource(tx, 'place', label);
    await tx.insert(BenchPlace, { id, workCentreId, number, label });
  }
}

/** Couriers run on the days on which the laboratory is open. */
async function writeCouriers(
  tx: EntityManager,
  hours: HoursWriter,
  laboratoryId: string,
  clinicIds: IdsByKey,
): Promise<void> {
  for (const { clinic, toLab, toClinic, transitMinutes } of scenario.couriers) {
    const courierId = uuidv7();
    await tx.insert(Courier, {
      id: courierId,
      clinicId: idOf(clinicIds, clinic),
      laboratoryId,
      name: `Courier of the ${clinic} clinic`,
      toLabMinutes: transitMinutes,
      toClinicMinutes: transitMinutes,
    });
    for (const { rule } of scenario.laboratory.opening) {
      for (const time of toLab) await hours.add({ courierId, direction: 'to-lab' }, rule, time, 0);
      for (const time of toClinic) await hours.add({ courierId, direction: 'to-clinic' }, rule, time, 0);
    }
  }
}
