import { normalise } from '@archwright/calendar';
import { orInto, setRange, type SlotBits, type WorkloadCentre } from '@archwright/planner';
import type { WorkCentreSnapshot } from '../snapshot.js';
import { SLOT_MINUTES, type PlanningAxis } from './axis.js';
import type { MovableStep, WorkloadRequest } from './workload-request.js';

/** Every work centre of the laboratories that may do the work. */
export const centresOf = ({ practice, laboratoryId, otherLaboratoryIds }: WorkloadRequest): WorkCentreSnapshot[] =>
  practice.laboratories
    .filter(({ id }) => id === laboratoryId || otherLaboratoryIds.includes(id))
    .flatMap(({ workCentres }) => workCentres);

/** @param staying steps that could move and for which there is no plan after all: their places are taken as they are */
export function toWorkloadCentres(
  request: WorkloadRequest,
  staying: readonly MovableStep[],
  axis: PlanningAxis,
): WorkloadCentre[] {
  return centresOf(request).map((centre) => toCentre(centre, request, staying, axis));
}

function toCentre(
  centre: WorkCentreSnapshot,
  request: WorkloadRequest,
  staying: readonly MovableStep[],
  axis: PlanningAxis,
): WorkloadCentre {
  const machine = request.machines.find(({ workCentreId }) => workCentreId === centre.id);
  const minutes = request.overtime.find(({ workCentreId }) => workCentreId === centre.id)?.minutes ?? 0;
  return {
    key: centre.id,
    open: withOvertime(axis.open(centre.working, centre.closures), minutes, axis.daysIn(request.zone)),
    places: centre.places.map(({ id, busy }) => {
      const taken = staying.filter(({ placeId }) => placeId === id).flatMap(({ holds }) => holds);
      return { key: id, free: axis.notBusy(taken.length === 0 ? busy : normalise([...busy, ...taken])) };
    }),
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
