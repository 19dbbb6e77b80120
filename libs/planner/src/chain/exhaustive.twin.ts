import type { ChainOperation, ChainProblem, LabAlternative, SlotBits } from './model.js';

/**
 * Every complete plan of a tiny problem, by trying everything. It shares the types of the engine and none of its code:
 * no bitset operations, no pieces, no sweeps.
 */
export interface TwinVisit {
  readonly option: number;
  readonly clinic: string;
  readonly clinician: string;
  readonly start: number;
  readonly end: number;
}

export interface TwinPlan {
  readonly visits: readonly TwinVisit[];
  /** Delivery day, wishes broken, clinician changes, clinic changes. */
  readonly vector: readonly [number, number, number, number];
  /** Buffer cost, placement cost, sum of starts. */
  readonly ties: readonly [number, number, number];
}

const isSet = (bits: SlotBits, slot: number): boolean =>
  Math.floor(bits[Math.floor(slot / 32)]! / 2 ** (slot % 32)) % 2 === 1;

function freeThroughout(bits: SlotBits, slotCount: number, start: number, length: number): boolean {
  if (start + length > slotCount) return false;
  for (let slot = start; slot < start + length; slot++) if (!isSet(bits, slot)) return false;
  return true;
}

interface Run {
  readonly end: number;
  readonly held: readonly number[];
}

/** Works through an operation slot by slot. */
function run(operation: ChainOperation, slotCount: number, start: number): Run | null {
  if (!isSet(operation.centreOpen, start)) return null;
  const held: number[] = [];
  let slot = start;
  let end = start;
  for (const { slots, mode, holdsPlace } of operation.segments) {
    let left = slots;
    while (left > 0) {
      if (slot >= slotCount) return null;
      if (mode === 'runs-on' || isSet(operation.centreOpen, slot)) {
        left--;
        if (holdsPlace) held.push(slot);
        end = slot + 1;
      }
      slot++;
    }
  }
  return { end, held };
}

interface Placement {
  readonly start: number;
  readonly end: number;
  readonly place: string | null;
  readonly from: number;
  readonly until: number;
}

function placements(operation: ChainOperation, slotCount: number): Placement[] {
  const out: Placement[] = [];
  const holds = operation.segments.some(({ holdsPlace }) => holdsPlace);
  for (let start = 0; start < slotCount; start++) {
    if (operation.allowed !== null && !isSet(operation.allowed, start)) continue;
    for (const batch of operation.batches) {
      if (batch.startSlot !== start) continue;
      out.push({ start, end: batch.endSlot, place: batch.place, from: start, until: batch.endSlot });
    }
    const made = run(operation, slotCount, start);
    if (made === null) continue;
    if (!holds) {
      out.push({ start, end: made.end, place: null, from: 0, until: 0 });
      continue;
    }
    for (const { key, free } of operation.places) {
      if (!made.held.every((slot) => isSet(free, slot))) continue;
      out.push({ start, end: made.end, place: key, from: made.held[0]!, until: made.held.at(-1)! + 1 });
    }
  }
  return out;
}

interface Arc {
  readonly anchor: 'start' | 'end';
  readonly lo: Int32Array | null;
  readonly hi: Int32Array | null;
  readonly byClinic: ReadonlyMap<string, { lo: Int32Array | null; hi: Int32Array | null }> | null;
}

function keeps(arc: Arc, clinic: string | null, start: number, end: number, target: number): boolean {
  const tables = (clinic === null ? undefined : arc.byClinic?.get(clinic)) ?? arc;
  const at = arc.anchor === 'start' ? start : end;
  return (tables.lo === null || tables.lo[at]! <= target) && (tables.hi === null || target <= tables.hi[at]!);
}

export class Twin {
  private readonly placed = new Map<ChainOperation, Placement[]>();
  private readonly jointMemo = new Map<string, boolean>();
  private readonly returnMemo = new Map<string, number>();

  constructor(
    readonly problem: ChainProblem,
    /** Plans, and calls of the visit enumeration, after which a problem counts as too large; then `plans` is `null`. */
    private readonly limits = { plans: 20_000, calls: 600_000 },
  ) {}

  private placementsOf(operation: ChainOperation): Placement[] {
    let known = this.placed.get(operation);
    if (known === undefined) {
      known = placements(operation, this.problem.slotCount);
      this.placed.set(operation, known);
    }
    return known;
  }

  /** Whether the phases can all be done between the given visits, each in the given laboratory. */
  possible(
    phases: readonly number[],
    labs: readonly number[],
    visitAt: (visit: number) => TwinVisit,
    compete: boolean,
  ): boolean {
    const { problem } = this;
    const jobs = phases.flatMap((phase, at) => {
      const lab = problem.phases[phase]!.labs[labs[at]!]!;
      return lab.operations.map((operation, index) => ({ phase, lab, operation, index }));
    });
    for (let at = 0; at < phases.length; at++) {
      const { after, before, labs: all } = problem.phases[phases[at]!]!;
      for (const arc of all[labs[at]!]!.arcs) {
        if (arc.from !== 'after' || arc.to !== 'before' || after === null) continue;
        const origin = visitAt(after);
        if (!keeps(arc, origin.clinic, origin.start, origin.end, visitAt(before).start)) return false;
      }
    }
    const done: Placement[] = [];
    const place = (at: number): boolean => {
      if (at === jobs.length) return true;
      const { phase, lab, operation, index } = jobs[at]!;
      return this.placementsOf(operation).some((choice) => {
        if (!this.fits(phase, lab, index, choice, visitAt)) return false;
        for (let other = 0; other < at; other++) {
          const job = jobs[other]!;
          const earlier = done[other]!;
          if (compete && choice.place !== null && choice.place === earlier.place) {
            if (choice.from < earlier.until && earlier.from < choice.until) return false;
          }
          if (job.phase !== phase) continue;
          for (const arc of lab.arcs) {
            if (
              arc.from === job.index &&
              arc.to === index &&
              !keeps(arc, null, earlier.start, earlier.end, choice.start)
            )
              return false;
            if (
              arc.from === index &&
              arc.to === job.index &&
              !keeps(arc, null, choice.start, choice.end, earlier.start)
            )
              return false;
          }
        }
        done[at] = choice;
        return place(at + 1);
      });
    };
    return place(0);
  }

  private fits(
    phase: number,
    lab: LabAlternative,
    index: number,
    choice: Placement,
    visitAt: (visit: number) => TwinVisit,
  ): boolean {
    const { after, before } = this.problem.phases[phase]!;
    const late = visitAt(before);
    if (choice.end > late.start) return false;
    const early = after === null ? null : visitAt(after);
    if (early !== null && choice.start < early.end) return false;
    return lab.arcs.every((arc) => {
      if (arc.from === index && arc.to === 'before')
        return keeps(arc, late.clinic, choice.start, choice.end, late.start);
      if (arc.from === 'after' && arc.to === index && early !== null) {
        return keeps(arc, early.clinic, early.start, early.end, choice.start);
      }
      return true;
    });
  }

  private labChoices(phases: readonly number[]): number[][] {
    return phases.reduce<number[][]>(
      (rows, phase) => rows.flatMap((row) => this.problem.phases[phase]!.labs.map((_, lab) => [...row, lab])),
      [[]],
    );
  }

  private remembered(phases: readonly number[], visits: readonly TwinVisit[]): boolean {
    const around = new Set<number>();
    for (const phase of phases) {
      const { after, before } = this.problem.phases[phase]!;
      if (after !== null) around.add(after);
      around.add(before);
    }
    const key = `${phases.join()}|${[...around].map((visit) => `${visit}:${visits[visit]!.start}:${visits[visit]!.option}`).join()}`;
    let known = this.jointMemo.get(key);
    if (known === undefined) {
      known = this.labChoices(phases).some((labs) => this.possible(phases, labs, (visit) => visits[visit]!, true));
      this.jointMemo.set(key, known);
    }
    return known;
  }

  /** Groups of phases that may want one place at a time. */
  private groups(): number[][] {
    const { phases } = this.problem;
    const keys = phases.map(
      ({ labs }) =>
        new Set(
          labs.flatMap(({ operations }) =>
            operations.flatMap((o) => [...o.places.map((p) => p.key), ...o.batches.map((b) => b.place)]),
          ),
        ),
    );
    const groups: number[][] = [];
    phases.forEach((phase, index) => {
      const meets = (other: number): boolean => {
        const { after, before } = phases[other]!;
        return (
          Math.max(after ?? -1, phase.after ?? -1) < Math.min(before, phase.before) &&
          [...keys[index]!].some((key) => keys[other]!.has(key))
        );
      };
      const joined = groups.filter((group) => group.some(meets));
      for (const group of joined) groups.splice(groups.indexOf(group), 1);
      groups.push([...joined.flat(), index]);
    });
    return groups;
  }

  /** Earliest start of the next visit for work handed over at `start` or later, the case's other work ignored. */
  private earliestReturn(phase: number, lab: number, early: TwinVisit, late: TwinVisit): number {
    const { slotCount, phases } = this.problem;
    const { after } = phases[phase]!;
    const key = `${phase}:${lab}:${early.option}:${late.option}:${early.start}`;
    let known = this.returnMemo.get(key);
    if (known !== undefined) return known;
    known = slotCount;
    const length = early.end - early.start;
    for (let t = early.start; t < slotCount; t++) {
      for (let y = 0; y < known; y++) {
        const at = (visit: number): TwinVisit =>
          visit === after ? { ...early, start: t, end: t + length } : { ...late, start: y };
        if (t + length <= slotCount && this.possible([phase], [lab], at, false)) known = y;
      }
    }
    this.returnMemo.set(key, known);
    return known;
  }

  private bufferCost(visits: readonly TwinVisit[]): number {
    const { problem } = this;
    let cost = 0;
    problem.visits.forEach(({ follows }, late) => {
      if (follows === null) return;
      const inBetween = problem.phases.flatMap(({ after, before }, phase) =>
        after === follows && before === late ? [phase] : [],
      );
      if (inBetween.length === 0) return;
      let least = Infinity;
      for (const labs of this.labChoices(inBetween)) {
        if (!this.possible(inBetween, labs, (visit) => visits[visit]!, false)) continue;
        const back = Math.max(
          ...inBetween.map((phase, at) => this.earliestReturn(phase, labs[at]!, visits[follows]!, visits[late]!)),
        );
        least = Math.min(
          least,
          problem.placement.bufferSteps.filter((step) => visits[late]!.start - back < step).length,
        );
      }
      cost += least;
    });
    return cost;
  }

  /** Whether kit units can be dealt out so that each is ready before it is used again. */
  private kitsDealt(visits: readonly TwinVisit[]): boolean {
    const { problem } = this;
    const uses = visits.flatMap((visit, index) =>
      problem.visits[index]!.options[visit.option]!.kits.map((kit) => ({ visit, kit })),
    );
    const readyAt = new Map<string, number>();
    const deal = (at: number): boolean => {
      if (at === uses.length) return true;
      const { visit, kit } = uses[at]!;
      const length = visit.end - visit.start + kit.reprocessingSlots;
      return kit.units.some(({ key, free }) => {
        if (!freeThroughout(free, problem.slotCount, visit.start, length)) return false;
        const ready = readyAt.get(key);
        if (ready !== undefined && ready > visit.start) return false;
        readyAt.set(key, visit.start + length);
        if (deal(at + 1)) return true;
        if (ready === undefined) readyAt.delete(key);
        else readyAt.set(key, ready);
        return false;
      });
    };
    return deal(0);
  }

  private choices(visit: number): TwinVisit[] {
    const { problem } = this;
    const { slotCount } = problem;
    return problem.visits[visit]!.options.flatMap((option, index) => {
      if (option.refused) return [];
      const out: TwinVisit[] = [];
      for (let start = 0; start + option.lengthSlots <= slotCount; start++) {
        const free = ({ free: bits }: { free: SlotBits }): boolean =>
          freeThroughout(bits, slotCount, start, option.lengthSlots);
        if (!isSet(option.allowed, start) || !option.chairs.some(free)) continue;
        if (option.assistants !== null && !option.assistants.some(free)) continue;
        for (const clinician of option.clinicians) {
          if (clinician.refused || !free(clinician)) continue;
          out.push({
            option: index,
            clinic: option.clinic,
            clinician: clinician.key,
            start,
            end: start + option.lengthSlots,
          });
        }
      }
      return out;
    });
  }

  private priced(visits: readonly TwinVisit[]): TwinPlan {
    const { problem } = this;
    let wishes = 0;
    let clinicians = 0;
    let clinics = 0;
    let placement = 0;
    visits.forEach((visit, index) => {
      const { follows, wished, options } = problem.visits[index]!;
      const before = follows === null ? problem.seenBy : visits[follows]!;
      if (wished !== null && !isSet(wished, visit.start)) wishes++;
      if (before !== null && before.clinician !== visit.clinician) clinicians++;
      if (before !== null && before.clinic !== visit.clinic) clinics++;
      const person = options[visit.option]!.clinicians.find(({ key }) => key === visit.clinician)!;
      placement += person.placementCost?.[visit.start] ?? 0;
    });
    const day = problem.dayOfSlot[visits[problem.deliveryVisit]!.start]!;
    return {
      visits: visits.slice(),
      vector: [day, wishes, clinicians, clinics],
      ties: [this.bufferCost(visits), placement, visits.reduce((sum, { start }) => sum + start, 0)],
    };
  }

  /** All plans, or `null` when there are too many to list. */
  plans(): TwinPlan[] | null {
    const { problem } = this;
    const groups = this.groups();
    const choices = problem.visits.map((_, visit) => this.choices(visit));
    const out: TwinPlan[] = [];
    const visits: TwinVisit[] = [];
    let calls = 0;
    const extend = (index: number): boolean => {
      if (++calls > this.limits.calls || out.length > this.limits.plans) return false;
      if (index === problem.visits.length) {
        const whole = groups.filter((group) => group.length > 1).every((group) => this.remembered(group, visits));
        if (whole && this.kitsDealt(visits)) out.push(this.priced(visits));
        return true;
      }
      for (const visit of choices[index]!) {
        if (index > 0 && visit.start < visits[index - 1]!.end) continue;
        if (index > 0 && problem.mixing === 'one-clinic' && visit.clinic !== visits[0]!.clinic) continue;
        const kept = problem.lags.every(
          (lag) =>
            lag.to !== index ||
            keeps(lag, visits[lag.from]!.clinic, visits[lag.from]!.start, visits[lag.from]!.end, visit.start),
        );
        if (!kept) continue;
        visits[index] = visit;
        visits.length = index + 1;
        const worked = problem.phases.every(
          ({ before }, phase) => before !== index || this.remembered([phase], visits),
        );
        if (worked && !extend(index + 1)) return false;
        visits.length = index;
      }
      return true;
    };
    return extend(0) ? out : null;
  }
}
