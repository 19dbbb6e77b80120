import type { ArcTables, ChainOperation, ChainProblem, ChainVector, SlotBits } from './model.js';

/**
 * A problem as a mixed-integer program, one yes-or-no variable for every start of every visit and operation, for a general
 * solver. It shares the types of the engine and none of its code, nor any of its ideas: no sets of starts are narrowed, no
 * laboratory work is joined into bounds between visits.
 */
type Terms = readonly (readonly [weight: number, variable: string])[];

interface Choice {
  readonly variable: string;
  readonly start: number;
  readonly end: number;
}

interface VisitChoice extends Choice {
  readonly option: number;
  readonly clinic: string;
  readonly clinician: string;
  readonly placement: number;
  readonly isWished: boolean;
}

/** An operation on one place (or none), or in one batch; `from` and `until` span the time for which it keeps the place. */
interface WorkChoice extends Choice {
  readonly place: string | null;
  readonly from: number;
  readonly until: number;
}

interface Work {
  readonly phase: number;
  readonly lab: number;
  readonly choices: readonly WorkChoice[];
}

const isSet = (bits: SlotBits, slot: number): boolean =>
  Math.floor(bits[Math.floor(slot / 32)]! / 2 ** (slot % 32)) % 2 === 1;

const isFree = (bits: SlotBits, from: number, until: number): boolean => {
  for (let slot = from; slot < until; slot++) if (!isSet(bits, slot)) return false;
  return true;
};

const sum = (choices: readonly Choice[], weight = 1): Terms => choices.map(({ variable }) => [weight, variable]);

export class IntegerModel {
  private readonly rows: string[] = [];
  private readonly binaries: string[] = [];
  private readonly visits: readonly (readonly VisitChoice[])[];
  private readonly work: readonly Work[];
  /** The variable of each laboratory, by phase. */
  private readonly chosen: readonly (readonly string[])[];
  /** Terms whose sums are the wishes broken, the changes of clinician and the changes of clinic. */
  private readonly counts: readonly Terms[];

  constructor(private readonly problem: ChainProblem) {
    this.visits = problem.visits.map((_, visit) => this.choicesOf(visit));
    for (const choices of this.visits) this.exactlyOne(sum(choices));
    this.chosen = problem.phases.map(({ labs }) => labs.map(() => this.binary()));
    this.work = problem.phases.flatMap((_, phase) => this.workOf(phase));
    this.keepOrder();
    this.keepLags();
    this.work.forEach((work) => {
      this.keepWithin(work);
    });
    this.keepArcs();
    this.keepPlaces();
    this.keepKits();
    if (problem.mixing === 'one-clinic') this.keepClinic();
    this.counts = [
      this.visits.flatMap((choices) => sum(choices.filter(({ isWished }) => !isWished))),
      this.changes(({ clinician }) => clinician, problem.seenBy?.clinician ?? null),
      this.changes(({ clinic }) => clinic, problem.seenBy?.clinic ?? null),
    ];
  }

  /** The least placement cost, then sum of starts, among plans nowhere above a vector. */
  cheapestWithin(vector: ChainVector): string {
    const most = this.problem.slotCount * this.visits.length + 1;
    const objective = this.visits.flatMap((choices) =>
      choices.map(({ variable, placement, start }) => [placement * most + start, variable] as const),
    );
    return this.text(objective, this.within(vector), []);
  }

  /** A plan that no vector of a front covers: below each of them in at least one axis. */
  outside(front: readonly ChainVector[]): string {
    const rows: string[] = [];
    const binaries: string[] = [];
    front.forEach((vector, at) => {
      const late = this.deliveries(({ start }) => this.problem.dayOfSlot[start]! >= vector.deliveryDay);
      const values = [vector.wishesBroken, vector.clinicianChanges, vector.clinicChanges];
      const axes = values.flatMap((value, axis) => (value === 0 ? [] : [axis]));
      const below = ['day', ...axes].map((axis) => `below_${String(at)}_${String(axis)}`);
      if (axes.length === 0) {
        rows.push(row(sum(late), '<=', 0));
        return;
      }
      binaries.push(...below);
      rows.push(row([...sum(late), [1, below[0]!]], '<=', 1));
      axes.forEach((axis, index) => {
        // Chosen: at most one less than the value; not chosen: as many as there are visits.
        const slack = this.visits.length + 1 - values[axis]!;
        rows.push(row([...this.counts[axis]!, [slack, below[index + 1]!]], '<=', this.visits.length));
      });
      rows.push(
        row(
          below.map((variable) => [1, variable]),
          '>=',
          1,
        ),
      );
    });
    return this.text([], rows, binaries);
  }

  private within({ deliveryDay, wishesBroken, clinicianChanges, clinicChanges }: ChainVector): string[] {
    const late = this.deliveries(({ start }) => this.problem.dayOfSlot[start]! > deliveryDay);
    const limits = [wishesBroken, clinicianChanges, clinicChanges];
    return [row(sum(late), '<=', 0), ...limits.map((most, axis) => row(this.counts[axis]!, '<=', most))];
  }

  private deliveries(keeps: (choice: VisitChoice) => boolean): VisitChoice[] {
    return this.visits[this.problem.deliveryVisit]!.filter(keeps);
  }

  private text(objective: Terms, rows: readonly string[], binaries: readonly string[]): string {
    return [
      'Minimize',
      `cost: ${objective.length === 0 ? '0 zero' : expression(objective)}`,
      'Subject To',
      ...[...this.rows, ...rows].filter((text) => text !== '').map((text, at) => `r${String(at)}: ${text}`),
      'Bounds',
      'zero = 0',
      'Binary',
      ...this.binaries,
      ...binaries,
      'End',
    ].join('\n');
  }

  private binary(): string {
    const name = `x${String(this.binaries.length)}`;
    this.binaries.push(name);
    return name;
  }

  private exactlyOne(terms: Terms): void {
    this.rows.push(row(terms.length === 0 ? [[0, 'zero']] : terms, '=', 1));
  }

  private atMostOne(terms: Terms): void {
    if (terms.length > 1) this.rows.push(row(terms, '<=', 1));
  }

  private choicesOf(visit: number): VisitChoice[] {
    const { visits, slotCount } = this.problem;
    const { options, wished } = visits[visit]!;
    const choices: VisitChoice[] = [];
    options.forEach((option, index) => {
      for (let start = 0; !option.refused && start + option.lengthSlots <= slotCount; start++) {
        const end = start + option.lengthSlots;
        const anyFree = (list: readonly { readonly free: SlotBits }[]) =>
          list.some(({ free }) => isFree(free, start, end));
        if (!isSet(option.allowed, start) || !anyFree(option.chairs)) continue;
        if (option.assistants !== null && !anyFree(option.assistants)) continue;
        for (const { key, free, refused, placementCost } of option.clinicians) {
          if (refused || !isFree(free, start, end)) continue;
          choices.push({
            variable: this.binary(),
            start,
            end,
            option: index,
            clinic: option.clinic,
            clinician: key,
            placement: placementCost?.[start] ?? 0,
            isWished: wished === null || isSet(wished, start),
          });
        }
      }
    });
    return choices;
  }

  /** One laboratory is chosen; each of its operations has one start, those of the others none. */
  private workOf(phase: number): Work[] {
    const { labs } = this.problem.phases[phase]!;
    const chosen = this.chosen[phase]!;
    this.exactlyOne(chosen.map((variable) => [1, variable]));
    return labs.flatMap(({ operations }, lab) =>
      operations.map((operation): Work => {
        const choices = this.placements(operation);
        this.rows.push(row([...sum(choices), [-1, chosen[lab]!]], '=', 0));
        return { phase, lab, choices };
      }),
    );
  }

  private placements(operation: ChainOperation): WorkChoice[] {
    const { slotCount } = this.problem;
    const choices: WorkChoice[] = [];
    const holds = operation.segments.some(({ holdsPlace }) => holdsPlace);
    for (let start = 0; start < slotCount; start++) {
      if (operation.allowed !== null && !isSet(operation.allowed, start)) continue;
      for (const { place, startSlot, endSlot } of operation.batches) {
        if (startSlot !== start) continue;
        choices.push({ variable: this.binary(), start, end: endSlot, place, from: start, until: endSlot });
      }
      const worked = isSet(operation.centreOpen, start) ? this.slotsOfWork(operation, start) : null;
      if (worked === null) continue;
      const { end, held } = worked;
      if (!holds) choices.push({ variable: this.binary(), start, end, place: null, from: 0, until: 0 });
      for (const { key, free } of holds ? operation.places : []) {
        if (!held.every((slot) => isSet(free, slot))) continue;
        choices.push({ variable: this.binary(), start, end, place: key, from: held[0]!, until: held.at(-1)! + 1 });
      }
    }
    return choices;
  }

  private slotsOfWork({ segments, centreOpen }: ChainOperation, start: number) {
    const held: number[] = [];
    let slot = start;
    let end = start;
    for (const { slots, mode, holdsPlace } of segments) {
      for (let done = 0; done < slots; slot++) {
        if (slot >= this.problem.slotCount) return null;
        if (mode === 'pauses' && !isSet(centreOpen, slot)) continue;
        done++;
        end = slot + 1;
        if (holdsPlace) held.push(slot);
      }
    }
    return { end, held };
  }

  /**
   * Forbids every pair whose later start is outside the bounds that the earlier choice gives.
   *
   * @param where variable without which the bounds do not count; `null` when they always do
   */
  private limit(
    early: readonly Choice[],
    late: readonly Choice[],
    bounds: (choice: Choice) => { readonly least: number; readonly most: number },
    where: string | null = null,
  ): void {
    const notBoth = (origins: readonly Choice[], targets: readonly Choice[]): void => {
      const terms = [...sum(origins), ...sum(targets)];
      if (where === null) this.atMostOne(terms);
      else this.rows.push(row([...terms, [1, where]], '<=', 2));
    };
    const given = early.map((choice) => ({ choice, ...bounds(choice) }));
    for (const least of new Set(given.map((each) => each.least))) {
      const tooEarly = late.filter(({ start }) => start < least);
      if (tooEarly.length === 0) continue;
      const origins = given.filter((each) => each.least >= least).map(({ choice }) => choice);
      notBoth(origins, tooEarly);
    }
    for (const most of new Set(given.map((each) => each.most))) {
      const tooLate = late.filter(({ start }) => start > most);
      if (tooLate.length === 0) continue;
      const origins = given.filter((each) => each.most <= most).map(({ choice }) => choice);
      notBoth(origins, tooLate);
    }
  }

  private limitByTables(
    { lo, hi }: ArcTables,
    anchor: 'start' | 'end',
    early: readonly Choice[],
    late: readonly Choice[],
    where: string | null = null,
  ): void {
    const bounds = ({ start, end }: Choice) => {
      const at = anchor === 'start' ? start : end;
      return { least: lo?.[at] ?? 0, most: hi?.[at] ?? this.problem.slotCount };
    };
    this.limit(early, late, bounds, where);
  }

  private readonly after = ({ end }: Choice) => ({ least: end, most: this.problem.slotCount });

  private keepOrder(): void {
    for (let visit = 1; visit < this.visits.length; visit++) {
      this.limit(this.visits[visit - 1]!, this.visits[visit]!, this.after);
    }
  }

  private keepLags(): void {
    for (const lag of this.problem.lags) {
      for (const clinic of new Set(this.visits[lag.from]!.map((choice) => choice.clinic))) {
        const early = this.visits[lag.from]!.filter((choice) => choice.clinic === clinic);
        this.limitByTables(lag.byClinic?.get(clinic) ?? lag, lag.anchor, early, this.visits[lag.to]!);
      }
    }
  }

  /** Work is done between its two visits. */
  private keepWithin({ phase, choices }: Work): void {
    const { after, before } = this.problem.phases[phase]!;
    this.limit(choices, this.visits[before]!, this.after);
    if (after !== null) this.limit(this.visits[after]!, choices, this.after);
  }

  private keepArcs(): void {
    this.problem.phases.forEach(({ after, before, labs }, phase) => {
      labs.forEach(({ arcs }, lab) => {
        const own = this.work.filter((work) => work.phase === phase && work.lab === lab);
        for (const arc of arcs) {
          if (arc.from === 'after' && after === null) continue;
          const ofVisit = (visit: number, clinic: string) =>
            this.visits[visit]!.filter((each) => each.clinic === clinic);
          const visit = arc.from === 'after' ? after : arc.to === 'before' ? before : null;
          const clinics = visit === null ? [''] : [...new Set(this.visits[visit]!.map(({ clinic }) => clinic))];
          for (const clinic of clinics) {
            const early = typeof arc.from === 'number' ? own[arc.from]!.choices : ofVisit(after!, clinic);
            const late =
              typeof arc.to === 'number'
                ? own[arc.to]!.choices
                : arc.from === 'after'
                  ? this.visits[before]!
                  : ofVisit(before, clinic);
            const tables = (visit === null ? undefined : arc.byClinic?.get(clinic)) ?? arc;
            // An arc from visit to visit binds where its laboratory is chosen; work elsewhere is not done at all.
            const where = visit !== null && typeof arc.from !== 'number' && typeof arc.to !== 'number';
            this.limitByTables(tables, arc.anchor, early, late, where ? this.chosen[phase]![lab]! : null);
          }
        }
      });
    });
  }

  private keepPlaces(): void {
    const keys = new Set(this.work.flatMap(({ choices }) => choices.flatMap(({ place }) => place ?? [])));
    for (const key of keys) {
      for (let slot = 0; slot < this.problem.slotCount; slot++) {
        const users = this.work.flatMap(({ choices }) =>
          choices.filter(({ place, from, until }) => place === key && from <= slot && slot < until),
        );
        this.atMostOne(sum(users));
      }
    }
  }

  /** Every need takes one unit for the visit and its reprocessing. */
  private keepKits(): void {
    const { visits, slotCount } = this.problem;
    const uses: { readonly unit: string; readonly from: number; readonly until: number; readonly variable: string }[] =
      [];
    visits.forEach(({ options }, visit) => {
      options.forEach(({ kits, lengthSlots }, option) => {
        for (const { units, reprocessingSlots } of kits) {
          for (let start = 0; start < slotCount; start++) {
            const choices = this.visits[visit]!.filter((each) => each.option === option && each.start === start);
            if (choices.length === 0) continue;
            const until = start + lengthSlots + reprocessingSlots;
            const taken = units
              .filter(({ free }) => until <= slotCount && isFree(free, start, until))
              .map(({ key }) => ({ unit: key, from: start, until, variable: this.binary() }));
            uses.push(...taken);
            this.rows.push(row([...sum(choices), ...taken.map(({ variable }) => [-1, variable] as const)], '=', 0));
          }
        }
      });
    });
    for (const unit of new Set(uses.map((use) => use.unit))) {
      for (let slot = 0; slot < slotCount; slot++) {
        const users = uses.filter((use) => use.unit === unit && use.from <= slot && slot < use.until);
        this.atMostOne(users.map(({ variable }) => [1, variable]));
      }
    }
  }

  private keepClinic(): void {
    for (const clinic of new Set(this.visits.flat().map((choice) => choice.clinic))) {
      const [first, ...others] = this.visits.map((choices) => choices.filter((each) => each.clinic === clinic));
      for (const other of others) this.rows.push(row([...sum(first ?? []), ...sum(other, -1)], '=', 0));
    }
  }

  /** One term per visit that is above 0 when somebody or something else had the visit before it. */
  private changes(keyOf: (choice: VisitChoice) => string, seenBy: string | null): Terms {
    return this.problem.visits.flatMap(({ follows }, visit): Terms => {
      const own = this.visits[visit]!;
      if (follows === null) return seenBy === null ? [] : sum(own.filter((choice) => keyOf(choice) !== seenBy));
      const change = this.binary();
      const before = this.visits[follows]!;
      for (const key of new Set(own.map(keyOf))) {
        const same = (choices: readonly VisitChoice[]) => choices.filter((choice) => keyOf(choice) === key);
        this.rows.push(row([...sum(same(own)), ...sum(same(before), -1), [-1, change]], '<=', 0));
      }
      return [[1, change]];
    });
  }
}

/** Lines of the format have to stay short. */
function expression(terms: Terms): string {
  return terms
    .map(
      ([weight, variable], at) =>
        `${weight < 0 ? '-' : '+'} ${String(Math.abs(weight))} ${variable}${at % 8 === 7 ? '\n' : ''}`,
    )
    .join(' ');
}

function row(terms: Terms, sign: '<=' | '=' | '>=', bound: number): string {
  return terms.length === 0 ? '' : `${expression(terms)} ${sign} ${String(bound)}`;
}
