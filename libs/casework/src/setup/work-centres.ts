import type { SetupView } from '@archwright/contracts';
import { BenchPlace, Laboratory, Resource, WorkCentre, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { KeptHours, replaceHours } from './hours-rows.js';
import { SetupRefusedError, type Hand, type Keeper, type RecordOf } from './keeper.js';
import { resourceStates, stateOf } from './resource-rows.js';

export const workCentreKeeper: Keeper<'work-centre'> = {
  table: 'work_centre',
  fixed: ['laboratoryId', 'code'],
  // Its places are what is booked: a centre is closed by a closure, or given fewer places.
  retires: false,

  async list(tx) {
    const states = await resourceStates(tx, ['place']);
    const centres = await tx.find(WorkCentre, { order: { name: 'ASC', id: 'ASC' } });
    const places = await tx.find(BenchPlace);
    const kept = await KeptHours.load(tx);
    return centres.map(({ id, version, laboratoryId, code, name, batchKind, batchSize }) => {
      const own = places.filter((place) => place.workCentreId === id && !stateOf(states, place.id).isRetired);
      return {
        id,
        version,
        isRetired: false,
        record: {
          kind: 'work-centre',
          ...{ laboratoryId, code, name },
          batch: batchKind === null || batchSize === null ? null : { kind: batchKind, size: batchSize },
          places: own.length,
          hours: kept.hours({ workCentreId: id }),
        },
      };
    });
  },

  async insert(tx, id, record, hand) {
    const { laboratoryId, code, name } = record;
    await tx.findOneOrFail(Laboratory, { where: { id: laboratoryId }, lock: { mode: 'pessimistic_write' } });
    if (await tx.existsBy(WorkCentre, { laboratoryId, code }))
      throw new SetupRefusedError(`The laboratory has a work centre "${code}" already.`, 'more places there');
    await tx.insert(WorkCentre, { id, laboratoryId, code, name, ...batchOf(record) });
    await writeRest(tx, id, record, hand);
  },

  async replace(tx, id, record, hand) {
    await tx.update(WorkCentre, { id }, { name: record.name, ...batchOf(record) });
    await writeRest(tx, id, record, hand);
  },
};

/** Every place, those out of use included: what is closed keeps its name. */
export async function benchPlacesOf(tx: EntityManager): Promise<SetupView['benchPlaces']> {
  const states = await resourceStates(tx, ['place']);
  const places = await tx.find(BenchPlace, { order: { label: 'ASC', id: 'ASC' } });
  return places.map(({ id, label }) => ({ id, label, isRetired: stateOf(states, id).isRetired }));
}

function batchOf({ batch }: RecordOf<'work-centre'>): Pick<WorkCentre, 'batchKind' | 'batchSize'> {
  return { batchKind: batch?.kind ?? null, batchSize: batch?.size ?? null };
}

async function writeRest(
  tx: EntityManager,
  workCentreId: string,
  { name, places, hours }: RecordOf<'work-centre'>,
  { now }: Hand,
): Promise<void> {
  await replaceHours(tx, { workCentreId }, hours);
  const known = await tx.find(BenchPlace, { where: { workCentreId }, order: { number: 'ASC' } });
  // The places of the lowest numbers stay or come back, the others go out of use; what is booked there is not moved.
  for (const [index, { id }] of known.entries())
    await tx.update(Resource, { id }, { retiredAt: index < places ? null : now });
  for (let number = (known.at(-1)?.number ?? 0) + 1, more = places - known.length; more > 0; number++, more--) {
    const id = uuidv7();
    const label = `${name} ${String(number)}`;
    await tx.insert(Resource, { id, kind: 'place', label });
    await tx.insert(BenchPlace, { id, workCentreId, number, label });
  }
}
