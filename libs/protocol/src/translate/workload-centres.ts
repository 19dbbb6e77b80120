import { closedInterval, normalise } from '@archwright/calendar';
import { and, orInto, setRange, type SlotBits, type WorkloadCentre } from '@archwright/planner';
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
    open: withOvertime(centre, minutes, axis, request.zone),
    places: centre.places.map(({ id, busy }) => {
      const taken = staying.filter(({ placeId }) => placeId === id).flatMap(({ holds }) => holds);
      return { key: id, free: axis.notBusy(taken.length === 0 ? busy : normalise([...busy, ...taken])) };
    }),
    runSize: machine?.runSize ?? null,
    openRuns: (machine?.runs ?? []).flatMap((run) => {
      const place = centre.places.findIndex(({ id }) => id === run.placeId);
      const inIt = staying.flatMap((step) => (step.run?.id === run.id ? step.run.units : []));
      if (!run.hasOthers && inIt.length === 0) return [];
      if (place < 0 || run.startMs < axis.originMs || run.endMs > axis.window.endMs) return [];
      return [
        {
          key: run.id,
          place,
          startSlot: axis.slotUntil(run.startMs),
          endSlot: axis.slotFrom(run.endMs),
          freeUnits: inIt.reduce((left, units) => left - units, run.freeUnits),
        },
      ];
    }),
  };
}

/** Open for longer after the last hour of each day on which anybody works, but not into what is closed. */
function withOvertime(
  { working, closures }: WorkCentreSnapshot,
  minutes: number,
  axis: PlanningAxis,
  zone: string,
): SlotBits {
  const open = axis.open(working, closures);
  if (minutes === 0) return open;
  const days = axis.daysIn(zone);
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
  const closed = closures.map((each) => ('zone' in each ? closedInterval(each) : each));
  const allowed = and(longer, axis.notBusy(normalise(closed)));
  orInto(allowed, open);
  return allowed;
}
