import {
  addDays,
  intersect,
  normalise,
  openIntervals,
  startOfDayMs,
  subtract,
  totalMinutes,
  union,
  type Interval,
} from '@archwright/calendar';
import type { LoadQuery, LoadView, Told } from '@archwright/contracts';
import { WorkCentre, loadSnapshot } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { tell, told } from '../tell.js';
import { casesAtRisk } from './at-risk.js';
import { loadBenchSteps, requireLaboratory } from './bench-steps.js';
import { loadPlaceTimes, type PlaceTimes } from './place-times.js';

type CentreLoad = LoadView['workCentres'][number];

/** Minutes booked of minutes open, per work centre and day of the laboratory's own zone, and what will be late. */
export async function loadOf(
  tx: EntityManager,
  actor: Actor,
  { laboratoryId, from, days: count }: LoadQuery,
  now: Date,
): Promise<LoadView> {
  const { name, zone } = await requireLaboratory(tx, actor, laboratoryId);
  const days = Array.from({ length: count }, (_, index) => addDays(from, index));
  const window = { startMs: startOfDayMs(from, zone), endMs: startOfDayMs(addDays(from, count), zone) };
  const scope = { clinicIds: [], laboratoryIds: [laboratoryId], fromMs: window.startMs, untilMs: window.endMs };
  const { laboratories } = await loadSnapshot(tx, scope, now);
  const centres = await tx.find(WorkCentre, { where: { laboratoryId }, order: { id: 'ASC' } });
  const placeIds = laboratories.flatMap(({ workCentres }) =>
    workCentres.flatMap(({ places }) => places.map((p) => p.id)),
  );
  const times = await loadPlaceTimes(tx, placeIds, window, now);
  const planned = [...(laboratories[0]?.workCentres ?? [])].sort(inOrderOf(centres));
  const workCentres = planned.map((centre): CentreLoad => {
    const hours = openIntervals({ rules: centre.working, closures: centre.closures }, window);
    const perPlace = centre.places.map(({ id }) => loadOfPlace(hours, times.get(id)));
    return {
      id: centre.id,
      code: centre.code,
      name: centres.find(({ id }) => id === centre.id)?.name ?? centre.code,
      places: centre.places.length,
      days: days.map((on) => dayOf(on, zone, perPlace)),
    };
  });
  const unfinished = await loadBenchSteps(tx, laboratoryId, { from: now, until: now });
  const atRisk = await casesAtRisk(tx, unfinished, zone, now);
  const inShort = tell(sentenceOf(workCentres, atRisk.length));
  return { laboratoryId, laboratoryName: name, zone, ...inShort, days, workCentres, atRisk };
}

/** As the laboratory has set them up, which is the way of the work through it. */
function inOrderOf(centres: readonly WorkCentre[]): (one: { id: string }, other: { id: string }) => number {
  const position = new Map(centres.map(({ id }, index) => [id, index]));
  return (one, other) => (position.get(one.id) ?? 0) - (position.get(other.id) ?? 0);
}

interface PlaceLoad {
  readonly open: readonly Interval[];
  readonly booked: readonly Interval[];
}

/**
 * A place is open in its work centre's hours, less its own closures. Booked is all hands-on work, and what else keeps the
 * place taken while it is open: a set or a machine that runs on at night costs nobody an open minute.
 */
function loadOfPlace(hours: readonly Interval[], times: PlaceTimes | undefined): PlaceLoad {
  if (times === undefined) return { open: hours, booked: [] };
  const open = subtract(hours, normalise(times.closed));
  const taken = intersect(normalise(times.taken), open);
  return { open, booked: union(taken, normalise(times.handsOn)) };
}

function dayOf(on: string, zone: string, places: readonly PlaceLoad[]): CentreLoad['days'][number] {
  const day = [{ startMs: startOfDayMs(on, zone), endMs: startOfDayMs(addDays(on, 1), zone) }];
  const minutes = (pick: (place: PlaceLoad) => readonly Interval[]) =>
    Math.round(places.reduce((sum, place) => sum + totalMinutes(intersect(pick(place), day)), 0));
  return { on, bookedMinutes: minutes(({ booked }) => booked), openMinutes: minutes(({ open }) => open) };
}

function sentenceOf(centres: readonly CentreLoad[], late: number): Told {
  const over = centres.flatMap(({ name, days }) =>
    days
      .filter((day) => day.bookedMinutes > day.openMinutes)
      .map(({ on }) => ({ code: 'load-over' as const, values: { name, on: { day: on } } })),
  );
  const named = over.slice(0, 3);
  return told('load', { late, over: named.length === 0 ? null : { list: named }, more: over.length - named.length });
}
