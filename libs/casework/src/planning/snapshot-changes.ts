import { normalise, subtract, type Interval } from '@archwright/calendar';
import { timeTaken, type CasePlan, type PracticeSnapshot } from '@archwright/protocol';

/** Time by resource. */
export type ResourceTimes = ReadonlyMap<string, readonly Interval[]>;

/** The practice as it would be without these bookings. */
export function withFreed(practice: PracticeSnapshot, freed: ResourceTimes): PracticeSnapshot {
  return changed(practice, (id, busy) => {
    const own = freed.get(id);
    return own === undefined ? busy : subtract(busy, normalise(own));
  });
}

/** The practice as it would be with these bookings as well. */
export function withTaken(practice: PracticeSnapshot, taken: ResourceTimes): PracticeSnapshot {
  return changed(practice, (id, busy) => {
    const own = taken.get(id);
    return own === undefined ? busy : normalise([...busy, ...own]);
  });
}

/** Everything that a plan would newly take: chairs, people, kits until they are ready again, and bench places. */
export function timesOf({ visits, labSteps }: Pick<CasePlan, 'visits' | 'labSteps'>): ResourceTimes {
  const times = new Map<string, Interval[]>();
  const add = (id: string | null, interval: Interval) => {
    if (id !== null && id !== '') times.set(id, [...(times.get(id) ?? []), interval]);
  };
  for (const visit of visits) {
    const { startMs, endMs } = timeTaken(visit);
    for (const id of [visit.chairId, visit.clinicianId, visit.assistantId]) add(id, { startMs, endMs });
    for (const { kitId, readyAtMs } of visit.kits) add(kitId, { startMs, endMs: readyAtMs });
  }
  for (const { placeId, batchId, holds } of labSteps) {
    // A run that the step joins is taken already.
    for (const { startMs, endMs } of batchId === null ? holds : []) add(placeId, { startMs, endMs });
  }
  return times;
}

type Busy = readonly Interval[];

function changed(practice: PracticeSnapshot, change: (id: string, busy: Busy) => Busy): PracticeSnapshot {
  const each = <Resource extends { readonly id: string; readonly busy: Busy }>(resources: readonly Resource[]) =>
    resources.map((resource) => ({ ...resource, busy: change(resource.id, resource.busy) }));
  return {
    ...practice,
    clinics: practice.clinics.map((clinic) => ({
      ...clinic,
      chairs: each(clinic.chairs),
      clinicians: each(clinic.clinicians),
      assistants: each(clinic.assistants),
      kits: each(clinic.kits),
    })),
    laboratories: practice.laboratories.map((laboratory) => ({
      ...laboratory,
      workCentres: laboratory.workCentres.map((centre) => ({ ...centre, places: each(centre.places) })),
    })),
  };
}
