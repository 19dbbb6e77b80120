import { seededRandom } from '@archwright/kernel';
import { ChainCache, planOffers, withHeld, type HeldTime } from '@archwright/planner';
import {
  PlanningAxis,
  combineArches,
  fromChainPlan,
  shippedPaths,
  startProgress,
  timeTaken,
  toChainProblem,
  type CasePlan,
  type PlanRequest,
  type PracticeSnapshot,
} from '@archwright/protocol';

const HORIZON_WEEKS = 16;
const DAY_MS = 86_400_000;
/** First visits are spread over five weeks. */
const SPREAD_DAYS = 35;
const SEED = 20270104;

interface Taken {
  readonly startMs: number;
  readonly endMs: number;
}

/** A case with every visit booked, and what it takes of the practice. */
export interface OpenCase {
  readonly caseId: string;
  readonly request: PlanRequest;
  readonly plan: CasePlan;
  readonly held: ReadonlyMap<string, readonly Taken[]>;
}

/** A practice of several times the size: that many of each clinic with its couriers, and of each bench place. */
export function timesAsLarge(practice: PracticeSnapshot, times: number): PracticeSnapshot {
  const copies = Array.from({ length: times }, (_, copy) => (copy === 0 ? '' : `-${String(copy)}`));
  const renamed = <Item extends { readonly id: string }>(items: readonly Item[], suffix: string): Item[] =>
    items.map((item) => ({ ...item, id: item.id + suffix }));
  return {
    clinics: copies.flatMap((suffix) =>
      practice.clinics.map((clinic) => ({
        ...clinic,
        id: clinic.id + suffix,
        chairs: renamed(clinic.chairs, suffix),
        clinicians: renamed(clinic.clinicians, suffix),
        assistants: renamed(clinic.assistants, suffix),
        kits: renamed(clinic.kits, suffix),
      })),
    ),
    couriers: copies.flatMap((suffix) =>
      practice.couriers.map((courier) => ({
        ...courier,
        id: courier.id + suffix,
        clinicId: courier.clinicId + suffix,
      })),
    ),
    laboratories: practice.laboratories.map((laboratory) => ({
      ...laboratory,
      sameRoofClinicIds: copies.flatMap((suffix) => laboratory.sameRoofClinicIds.map((id) => id + suffix)),
      workCentres: laboratory.workCentres.map((centre) => ({
        ...centre,
        places: copies.flatMap((suffix) => renamed(centre.places, suffix)),
      })),
    })),
  };
}

/** Books one case after the other, each with its first offer beside all earlier ones; those that find none are left out. */
export function bookCases(practice: PracticeSnapshot, count: number, nowMs: number): OpenCase[] {
  const random = seededRandom(SEED, count);
  const axis = new PlanningAxis(nowMs, HORIZON_WEEKS);
  const cache = new ChainCache();
  const taken = new Map<string, { startSlot: number; endSlot: number }[]>();
  const booked: OpenCase[] = [];
  for (let index = 0; index < count; index++) {
    const clinic = practice.clinics[index % practice.clinics.length];
    if (clinic === undefined) throw new Error('The practice has clinics.');
    const request = requestFor(practice, clinic.id, nowMs, {
      startsInDays: random.nextBelow(SPREAD_DAYS),
      weekdays: random.nextBelow(3) === 0 ? [2, 4] : [],
      path: random.nextBelow(4) === 0 ? 'abbreviated' : 'conventional',
    });
    const { problem, names } = toChainProblem(request, axis);
    const beside: HeldTime = taken;
    const [offer] = planOffers(withHeld(problem, [beside], cache), 1, cache).offers;
    if (offer === undefined) continue;
    const plan = fromChainPlan(offer, names);
    const held = heldBy(plan);
    for (const [id, times] of held) {
      const slots = times.map(({ startMs, endMs }) => ({
        startSlot: axis.slotUntil(startMs),
        endSlot: axis.slotFrom(endMs),
      }));
      taken.set(id, [...(taken.get(id) ?? []), ...slots]);
    }
    // What is planned anew may start at once.
    booked.push({ caseId: `case-${String(index)}`, request: { ...request, notBeforeMs: null }, plan, held });
  }
  return booked;
}

interface CaseKind {
  readonly startsInDays: number;
  readonly weekdays: readonly number[];
  readonly path: string;
}

function requestFor(
  practice: PracticeSnapshot,
  clinicId: string,
  nowMs: number,
  { startsInDays, weekdays, path: code }: CaseKind,
): PlanRequest {
  const path = shippedPaths.find((each) => each.code.startsWith(code));
  if (path === undefined) throw new Error(`No shipped path is called ${code}.`);
  const chain = combineArches({ upper: path, lower: path });
  const clinics = practice.clinics.filter(({ id }) => id === clinicId);
  return {
    chain,
    progress: startProgress(chain),
    fixedStages: [],
    fixedSteps: [],
    practice: { ...practice, clinics },
    patient: {
      id: 'patient',
      zone: clinics[0]?.zone ?? 'UTC',
      busy: [],
      otherVisits: [],
      wishes: { weekdays, from: null, to: null },
      unavailableOn: [],
      escort: [],
      wheelchairRoom: false,
      travelMinutes: 20,
      chairMinutesPerDay: null,
      homeTravelMinutes: null,
    },
    wishes: { clinicIds: [clinicId], clinicianId: null, laboratoryIds: practice.laboratories.map(({ id }) => id) },
    nowMs,
    notBeforeMs: nowMs + startsInDays * DAY_MS,
    horizonWeeks: HORIZON_WEEKS,
    rush: false,
    lagOverrides: {},
    ignoreUnavailable: false,
  };
}

function heldBy({ visits, labSteps }: CasePlan): Map<string, Taken[]> {
  const held = new Map<string, Taken[]>();
  const take = (id: string | null, time: Taken): void => {
    if (id !== null && id !== '') held.set(id, [...(held.get(id) ?? []), time]);
  };
  for (const visit of visits) {
    const { startMs, endMs } = timeTaken(visit);
    for (const id of [visit.chairId, visit.clinicianId, visit.assistantId]) take(id, { startMs, endMs });
    for (const { kitId, readyAtMs } of visit.kits) take(kitId, { startMs, endMs: readyAtMs });
  }
  for (const { placeId, holds } of labSteps) for (const time of holds) take(placeId, time);
  return held;
}
