import type { SeededRandom } from '@archwright/kernel';
import type {
  ArcTables,
  ChainClinician,
  ChainLag,
  ChainOperation,
  ChainPhase,
  ChainProblem,
  ChainResource,
  ChainVisit,
  KitNeed,
  LabAlternative,
  PhaseArc,
  SlotBits,
  VisitOption,
} from './model.js';

/** What a family of tiny problems makes likely. */
export const FAMILIES = [
  'plain-waits',
  'limits-inside-phases',
  'pausing-and-holds',
  'two-labs',
  'own-work-competes',
  'second-arch',
  'kits',
  'mixed-clinics',
  'one-of-two-clinics',
  'reviews-and-long-waits',
  'batches',
  'everything',
] as const;
export type Family = (typeof FAMILIES)[number];

/** How much there is to choose from; counts are "from, and up to so many more". */
export interface ProblemSize {
  /** Slots of a day, the last one at night. */
  readonly day: number;
  readonly days: readonly [number, number];
  readonly visits: readonly [number, number];
  readonly mostOperations: number;
}

/** Small enough to try everything. */
const TINY: ProblemSize = { day: 6, days: [4, 2], visits: [2, 2], mostOperations: 3 };

function bitsWhere(slotCount: number, holds: (slot: number) => boolean): SlotBits {
  const bits = new Uint32Array(Math.ceil(slotCount / 32));
  for (let slot = 0; slot < slotCount; slot++) if (holds(slot)) bits[slot >> 5]! |= 1 << (slot & 31);
  return bits;
}

/** Draws one problem, tiny unless a size is given. */
export function tinyProblem(random: SeededRandom, family: Family, size = TINY): ChainProblem {
  const dayLength = size.day;
  const is = (...families: Family[]): boolean => family === 'everything' || families.includes(family);
  const upTo = (most: number): number => random.nextBelow(most + 1);
  const chance = (percent: number): boolean => random.nextBelow(100) < percent;
  const slotCount = dayLength * (size.days[0] + upTo(size.days[1]));
  const day = (slot: number): number => Math.floor(slot / dayLength);
  const isOpen = (slot: number): boolean => slot % dayLength !== dayLength - 1;
  const free = (percent: number): SlotBits => bitsWhere(slotCount, (slot) => isOpen(slot) && chance(percent));
  const resource = (key: string, percent: number): ChainResource => ({ key, free: free(percent) });

  const after = (slots: number): Int32Array =>
    Int32Array.from({ length: slotCount + 1 }, (_, anchor) => Math.min(slotCount, anchor + slots));
  const atMost = (slots: number): Int32Array =>
    Int32Array.from({ length: slotCount + 1 }, (_, anchor) => Math.min(slotCount - 1, anchor + slots));
  const nextDays = (days: number): Int32Array =>
    Int32Array.from({ length: slotCount + 1 }, (_, anchor) => Math.min(slotCount, (day(anchor) + days) * dayLength));
  const daysAtMost = (days: number): Int32Array =>
    Int32Array.from({ length: slotCount + 1 }, (_, anchor) =>
      Math.min(slotCount - 1, (day(anchor) + days + 1) * dayLength - 1),
    );
  const courier = (): Int32Array => {
    const table = new Int32Array(slotCount + 1);
    const every = 2 + upTo(4);
    const travel = 1 + upTo(2);
    for (let anchor = 0; anchor <= slotCount; anchor++) {
      table[anchor] = Math.min(slotCount, Math.ceil(anchor / every) * every + travel);
    }
    return table;
  };

  const clinics = is('mixed-clinics', 'one-of-two-clinics') && chance(85) ? ['north', 'south'] : ['north'];
  const people = ['ada', 'bo'].slice(0, 1 + upTo(1));
  const fill = 60 + upTo(35);
  const staff = new Map(
    clinics.map((clinic) => [
      clinic,
      {
        clinicians: people.map((key) => ({
          key: clinic === 'south' && chance(50) ? `${key}-south` : key,
          free: free(fill),
        })),
        chairs: [resource(`${clinic}-chair-1`, fill), resource(`${clinic}-chair-2`, fill)].slice(0, 1 + upTo(1)),
        assistants: [resource(`${clinic}-assistant`, 80)],
        kits: [resource('kit-1', 95), resource('kit-2', 95)].slice(0, 1 + upTo(1)),
      },
    ]),
  );

  const reviews = is('reviews-and-long-waits') ? upTo(2) : 0;
  const mostVisits = size.visits[0] + size.visits[1];
  const count = size.visits[0] + upTo(size.visits[1]) + (reviews > 0 && family !== 'everything' ? reviews - 1 : 0);
  const visitCount = Math.min(mostVisits, count);
  const deliveryVisit = Math.max(1, visitCount - 1 - reviews);
  const option = (clinic: string, lengthSlots: number, needsKit: boolean): VisitOption => {
    const own = staff.get(clinic)!;
    const clinicians = own.clinicians.map(({ key, free: bits }): ChainClinician => ({
      key,
      free: bits,
      placementCost: chance(40) ? Uint8Array.from({ length: slotCount }, () => upTo(2)) : null,
      refused: chance(5),
    }));
    const allowed = chance(25) ? bitsWhere(slotCount, (slot) => slot % 2 === 0) : bitsWhere(slotCount, () => true);
    const kits: KitNeed[] = needsKit ? [{ kind: 'kit', reprocessingSlots: upTo(3), units: own.kits }] : [];
    return {
      clinic,
      refused: clinic === 'south' && chance(10),
      lengthSlots: lengthSlots + (chance(10) ? 1 : 0),
      open: bitsWhere(slotCount, isOpen),
      clinicians,
      chairs: own.chairs,
      assistants: chance(25) ? own.assistants : null,
      kits,
      allowed,
      allowedIfLifted: null,
    };
  };
  const visits = Array.from({ length: visitCount }, (_, index): ChainVisit => {
    const lengthSlots = 1 + (chance(30) ? 1 : 0);
    const needsKit = is('kits') && chance(75);
    const star = index > deliveryVisit && chance(50);
    return {
      key: `visit-${String(index)}`,
      follows: index === 0 ? null : star ? deliveryVisit : index - 1,
      options: clinics.map((clinic) => option(clinic, lengthSlots, needsKit)),
      wished: chance(60) ? bitsWhere(slotCount, (slot) => slot % dayLength < dayLength / 2) : null,
    };
  });

  const lags: ChainLag[] = [];
  const lag = (from: number, to: number, tables: ArcTables): void => {
    const anchor = chance(60) ? 'end' : 'start';
    lags.push({ key: `lag-${String(lags.length)}`, from, to, anchor, ...tables, byClinic: null });
  };
  for (let to = 1; to < visitCount; to++) {
    if (chance(70)) {
      lag(to - 1, to, {
        lo: chance(70) ? (chance(50) ? nextDays(1) : after(1 + upTo(4))) : null,
        hi: chance(60) ? (chance(50) ? daysAtMost(1 + upTo(2)) : atMost(5 + upTo(10))) : null,
      });
    }
  }
  if (is('reviews-and-long-waits', 'plain-waits') && visitCount > 2 && chance(70)) {
    const from = upTo(visitCount - 3);
    lag(from, from + 2, {
      lo: chance(40) ? nextDays(1 + upTo(1)) : null,
      hi: chance(80) ? (chance(50) ? daysAtMost(1 + upTo(2)) : atMost(6 + upTo(9))) : null,
    });
  }

  const centreOpen = bitsWhere(
    slotCount,
    (slot) => isOpen(slot) && (family === 'plain-waits' || slot % dayLength < dayLength - 2 || chance(50)),
  );
  const sharedPlaces = [resource('bench-1', 80), resource('bench-2', 80)].slice(0, 1 + upTo(1));
  const operation = (key: string, lab: string): ChainOperation => {
    const shared = is('own-work-competes') && chance(75);
    const places = shared
      ? sharedPlaces
      : [resource(`${lab}-${key}-place`, 80), resource(`${lab}-${key}-other`, 80)].slice(0, 1 + upTo(1));
    const segments: ChainOperation['segments'][number][] = [{ slots: 1, mode: 'pauses', holdsPlace: true }];
    if (is('pausing-and-holds', 'limits-inside-phases')) {
      segments[0] = { slots: 1 + upTo(1), mode: 'pauses', holdsPlace: chance(80) };
      if (chance(40)) segments.push({ slots: 1 + upTo(2), mode: 'runs-on', holdsPlace: chance(50) });
      if (chance(20)) segments.push({ slots: 1, mode: 'pauses', holdsPlace: chance(50) });
    }
    const batches = [];
    if (is('batches') && chance(60)) {
      const startSlot = upTo(slotCount - 6);
      batches.push({ key: `${key}-batch`, place: places[0]!.key, startSlot, endSlot: startSlot + 1 + upTo(4) });
    }
    return { key, centre: 'bench', centreOpen, segments, places, batches, allowed: chance(10) ? free(80) : null };
  };
  const byClinic = (): ReadonlyMap<string, ArcTables> | null =>
    clinics.length > 1 && chance(60) ? new Map([['south', { lo: courier(), hi: null }]]) : null;
  const laboratory = (lab: string, phase: string): LabAlternative => {
    const operationCount = is('own-work-competes') ? 1 + upTo(size.mostOperations - 1) : upTo(size.mostOperations);
    const operations = Array.from({ length: operationCount }, (_, index) =>
      operation(`${phase}-${String(index)}`, lab),
    );
    const arcs: PhaseArc[] = [];
    const arc = (from: PhaseArc['from'], to: PhaseArc['to'], tables: ArcTables, clinic: boolean): void => {
      const key = `${phase}-arc-${String(arcs.length)}`;
      arcs.push({
        key,
        from,
        to,
        anchor: chance(75) ? 'end' : 'start',
        ...tables,
        byClinic: clinic ? byClinic() : null,
      });
    };
    operations.forEach((_, index) => {
      const limited = is('limits-inside-phases') ? 55 : 20;
      const hi = chance(limited) ? atMost(2 + upTo(8)) : null;
      const chained = index > 0 && chance(is('own-work-competes') ? 40 : 75);
      if (chained) arc(index - 1, index, { lo: after(upTo(1)), hi }, false);
      if (!chained || chance(20))
        arc(
          'after',
          index,
          { lo: chance(50) ? courier() : after(upTo(2)), hi: chance(limited / 2) ? atMost(6 + upTo(6)) : null },
          true,
        );
      if (index === operationCount - 1 || chance(30)) {
        arc(
          index,
          'before',
          { lo: chance(50) ? courier() : after(upTo(2)), hi: chance(limited / 2) ? atMost(6 + upTo(8)) : null },
          true,
        );
      }
    });
    if (operationCount === 0 && chance(80)) arc('after', 'before', { lo: after(1 + upTo(5)), hi: null }, true);
    return { lab, operations, arcs };
  };
  const phases: ChainPhase[] = [];
  const phase = (from: number | null, before: number): void => {
    const key = `phase-${String(phases.length)}`;
    const labs = [laboratory('lab-a', key)];
    if (is('two-labs') && chance(80)) labs.push(laboratory('lab-b', key));
    phases.push({ key, after: from, before, labs });
  };
  if (family !== 'plain-waits') {
    for (let before = 1; before <= deliveryVisit; before++)
      if (chance(family === 'everything' ? 50 : 75)) phase(before - 1, before);
    if (is('second-arch') && deliveryVisit >= 2 && chance(85)) phase(0, 2);
    else if (is('second-arch', 'own-work-competes') && chance(40)) phase(0, 1);
    if (chance(10)) phase(null, 0);
  }
  return {
    slotCount,
    dayOfSlot: Int32Array.from({ length: slotCount }, (_, slot) => 100 + day(slot)),
    halfDayOfSlot: Int32Array.from({ length: slotCount }, (_, slot) => Math.floor(slot / (dayLength / 2))),
    visits,
    deliveryVisit,
    lags,
    phases,
    mixing: family === 'one-of-two-clinics' || (family === 'everything' && chance(50)) ? 'one-clinic' : 'any-clinic',
    seenBy: chance(20) ? { clinic: 'north', clinician: 'ada' } : null,
    placement: { bufferSteps: chance(70) ? [2, 5] : [], mostCost: 2 },
  };
}
