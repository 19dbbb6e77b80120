import { orInto, setRange, type SlotBits, type WorkloadCentre } from '@archwright/planner';
import type { WorkCentreSnapshot } from '../snapshot.js';
import { SLOT_MINUTES, type PlanningAxis } from './axis.js';
import type { WorkloadRequest } from './workload-request.js';

/** Every work centre of the laboratories that may do the work. */
export function toWorkloadCentres(request: WorkloadRequest, axis: PlanningAxis): WorkloadCentre[] {
  const able = [request.laboratoryId, ...request.otherLaboratoryIds];
  return request.practice.laboratories
    .filter(({ id }) => able.includes(id))
    .flatMap(({ workCentres }) => workCentres.map((centre) => toCentre(centre, request, axis)));
}

function toCentre(centre: WorkCentreSnapshot, request: WorkloadRequest, axis: PlanningAxis): WorkloadCentre {
  const machine = request.machines.find(({ workCentreId }) => workCentreId === centre.id);
  const minutes = request.overtime.find(({ workCentreId }) => workCentreId === centre.id)?.minutes ?? 0;
  return {
    key: centre.id,
    open: withOvertime(axis.open(centre.working, centre.closures), minutes, axis.daysIn(request.zone)),
    places: centre.places.map(({ id, busy }) => ({ key: id, free: axis.notBusy(busy) })),
    runSize: machine?.runSize ?? null,
    openRuns: (machine?.runs ?? []).flatMap((run) => {
      const place = centre.places.findIndex(({ id }) => id === run.placeId);
      if (place < 0 || run.startMs < axis.originMs || run.endMs > axis.window.endMs) return [];
      return [
        {
          key: run.id,
          place,
          startSlot: axis.slotUntil(run.startMs),
          endSlot: axis.slotFrom(run.endMs),
          freeUnits: run.freeUnits,
        },
      ];
    }),
  };
}

/** Open for longer after the last hour of each day on which anybody works. */
function withOvertime(open: SlotBits, minutes: number, days: Int32Array): SlotBits {
  if (minutes === 0) return open;
  const slots = Math.ceil(minutes / SLOT_MINUTES);
  const longer = new Uint32Array(open.length);
  let last = -1;
  for (let slot = 0; slot <= days.length; slot++) {
    const isNewDay = slot === days.length || (slot > 0 && days[slot] !== days[slot - 1]);
    if (isNewDay && last >= 0) setRange(longer, last + 1, Math.min(last + slots, days.length - 1));
    if (isNewDay) last = -1;
    const word = open[slot >> 5] ?? 0;
    if (slot < days.length && ((word >>> (slot & 31)) & 1) === 1) last = slot;
  }
  orInto(longer, open);
  return longer;
}
