import { seededRandom } from '@archwright/kernel';
import { ChainCache } from '../chain/cache.js';
import { holdsOf, type Hold } from '../chain/operation.js';
import { WorkloadDecoder, type Genotype } from './decoder.js';
import { layOutWorkload, type WorkloadLayout } from './layout.js';
import type { WorkloadObjective, WorkloadPlan, WorkloadProblem } from './model.js';
import { WorkloadMoves } from './moves.js';
import { compareObjectives, WorkloadJudge, type WorkloadAim } from './objective.js';
import { inForce, leastSlackFirst } from './start-plans.js';
import { workloadBound, type WorkloadBound } from './workload-bound.js';

/** Plans made by each stream in an epoch. */
const EPOCH_PLANS = 250;
/** A plan is accepted that is no worse than the one so many plans ago (late acceptance, after Burke & Bykov 2017). */
const MEMORY = 40;
/** A stream that has found nothing better for so many epochs goes on from the best plan of all. */
const IDLE_EPOCHS = 8;

export interface WorkloadSearchSettings {
  readonly seed: number;
  /** Independent searches, each with random numbers of its own; a parameter, whatever the machine has. */
  readonly streams: number;
  readonly aim: WorkloadAim;
}

/** A plan that a stream has found, to be made again anywhere. */
export interface StreamFind {
  readonly genotype: Genotype;
  readonly objective: WorkloadObjective;
  readonly stream: number;
}

/** The best of what several streams have found in one epoch, whichever thread each ran on: of equally good ones the first stream's. */
export function bestFind(finds: readonly (StreamFind | null)[], aim: WorkloadAim): StreamFind | null {
  return finds.reduce((best, find) => {
    if (best === null || find === null) return best ?? find;
    const order = compareObjectives(find.objective, best.objective, aim);
    return order < 0 || (order === 0 && find.stream < best.stream) ? find : best;
  }, null);
}

/** One of the searches: where it stands, and what it remembers. */
interface Stream {
  readonly number: number;
  readonly moves: WorkloadMoves;
  readonly memory: WorkloadObjective[];
  genotype: Genotype;
  objective: WorkloadObjective;
  best: WorkloadObjective;
  plans: number;
  idleEpochs: number;
}

/**
 * Looks for better plans than the one in force: a function of problem, settings and number of epochs, so that any plan
 * can be made again bit for bit. Streams meet at the end of each epoch, in their order.
 *
 * On several threads each has a search with streams of its own (`own`); {@link runStreams} and {@link meet} take the place
 * of {@link runEpoch} there, with the {@link bestFind} of all threads in between.
 */
export class WorkloadSearch {
  readonly bound: WorkloadBound;
  /** What the plan in force is worth now. */
  readonly inForce: WorkloadPlan;
  epochs = 0;
  private readonly layout: WorkloadLayout;
  private readonly decoder: WorkloadDecoder;
  private readonly judge: WorkloadJudge;
  private readonly streams: Stream[];
  private readonly trial: Genotype;
  private readonly isAllInForce: boolean;
  private bestGenotype: Genotype;
  private bestKnown: WorkloadObjective;
  private readonly calendars = new ChainCache();

  /** @throws what {@link layOutWorkload} refuses */
  constructor(
    problem: WorkloadProblem,
    private readonly settings: WorkloadSearchSettings,
    own: readonly number[] = Array.from({ length: settings.streams }, (_, stream) => stream),
  ) {
    this.layout = layOutWorkload(problem);
    this.decoder = new WorkloadDecoder(this.layout);
    this.judge = new WorkloadJudge(this.layout);
    this.bound = workloadBound(this.layout);
    this.isAllInForce = this.layout.operations.every((each) => each.alternative > 0 || each.currentStart >= 0);
    const present = inForce(this.layout);
    const early = leastSlackFirst(this.layout);
    this.trial = copyOf(present);
    this.inForce = this.planOf(present);
    this.bestGenotype = present;
    this.bestKnown = this.inForce.objective;
    const earlyObjective = this.objectiveOf(early);
    if (this.isBetter(earlyObjective, this.bestKnown)) {
      this.bestGenotype = copyOf(early);
      this.bestKnown = earlyObjective;
    }
    this.streams = own.map((number) => {
      const isEarly = number % 2 === 1;
      const objective = isEarly ? earlyObjective : this.inForce.objective;
      return {
        number,
        moves: new WorkloadMoves(this.layout, seededRandom(settings.seed, number)),
        memory: Array.from({ length: MEMORY }, () => objective),
        genotype: copyOf(isEarly ? early : present),
        objective,
        best: objective,
        plans: 0,
        idleEpochs: 0,
      };
    });
  }

  get bestObjective(): WorkloadObjective {
    return this.bestKnown;
  }

  /** The best plan so far; the one in force when nothing better is known. */
  get best(): WorkloadPlan {
    return this.planOf(this.bestGenotype);
  }

  /**
   * No plan is better, whatever is searched: nothing is broken, nothing is later than it has to be, and everything stays
   * where it is, so that what comes after in the order can't change either.
   */
  get isProved(): boolean {
    const { violations, lateness, disruption, overload } = this.bestKnown;
    const isLevel = this.settings.aim === 'fewest-moves' || overload === 0;
    return violations === 0 && lateness === this.bound.lateness && disruption === 0 && isLevel && this.isAllInForce;
  }

  runEpoch(): void {
    if (!this.isProved) this.meet(this.runStreams());
  }

  /** Runs its own streams through an epoch; the best plan stays what it was until they {@link meet}. */
  runStreams(): StreamFind | null {
    this.epochs++;
    return bestFind(
      this.streams.map((stream) => this.search(stream)),
      this.settings.aim,
    );
  }

  /** Ends an epoch. @param find of all streams, those of other threads included */
  meet(find: StreamFind | null): void {
    if (find !== null) {
      this.bestGenotype = find.genotype;
      this.bestKnown = find.objective;
    }
    for (const stream of this.streams) if (stream.idleEpochs >= IDLE_EPOCHS) this.sendToBest(stream);
  }

  /** @returns the first plan that nothing in this epoch is better than, if it is better than the best so far */
  private search(stream: Stream): StreamFind | null {
    const { aim } = this.settings;
    const before = stream.best;
    let find: StreamFind | null = null;
    this.objectiveOf(stream.genotype);
    stream.moves.look(this.decoder, stream.genotype.chosen);
    for (let plan = 0; plan < EPOCH_PLANS; plan++) {
      copyInto(stream.genotype, this.trial);
      const changes = 1 + (stream.plans & 1);
      for (let change = 0; change < changes; change++) stream.moves.change(this.trial, this.decoder);
      const objective = this.objectiveOf(this.trial);
      const slot = stream.plans++ % MEMORY;
      const isKept =
        compareObjectives(objective, stream.memory[slot]!, aim) <= 0 ||
        compareObjectives(objective, stream.objective, aim) <= 0;
      if (isKept) {
        copyInto(this.trial, stream.genotype);
        stream.objective = objective;
        stream.moves.look(this.decoder, stream.genotype.chosen);
        if (this.isBetter(objective, stream.best)) stream.best = objective;
        if (this.isBetter(objective, find?.objective ?? this.bestKnown))
          find = { genotype: copyOf(this.trial), objective, stream: stream.number };
      }
      stream.memory[slot] = stream.objective;
    }
    stream.idleEpochs = this.isBetter(stream.best, before) ? 0 : stream.idleEpochs + 1;
    return find;
  }

  private sendToBest(stream: Stream): void {
    copyInto(this.bestGenotype, stream.genotype);
    stream.objective = this.bestKnown;
    stream.best = this.bestKnown;
    stream.memory.fill(this.bestKnown);
    stream.idleEpochs = 0;
  }

  private isBetter(one: WorkloadObjective, other: WorkloadObjective): boolean {
    return compareObjectives(one, other, this.settings.aim) < 0;
  }

  private objectiveOf(genotype: Genotype): WorkloadObjective {
    this.decoder.decode(genotype);
    return this.judge.judge(this.decoder, genotype.chosen);
  }

  private planOf(genotype: Genotype): WorkloadPlan {
    const objective = this.objectiveOf(genotype);
    const { layout, decoder } = this;
    const { problem, placesFrom, ofJob } = layout;
    const keyOf = (centre: number, place: number): string | null =>
      place < 0 ? null : problem.centres[centre]!.places[place - placesFrom[centre]!]!.key;
    const placed = ofJob.flatMap((alternatives, job) =>
      alternatives[genotype.chosen[job]!]!.map((id) => {
        const { index, centre } = layout.operations[id]!;
        const place = keyOf(centre, decoder.place[id]!);
        const [startSlot, endSlot] = [decoder.start[id]!, decoder.end[id]!];
        return { job, operation: index, startSlot, endSlot, place, holds: this.holdsOf(id, startSlot) };
      }),
    );
    return { objective, chosen: [...genotype.chosen], placed, load: this.judge.loadOfDays() };
  }

  private holdsOf(id: number, startSlot: number): Hold[] {
    if (startSlot < 0) return [];
    const { problem, operations, slotCount } = this.layout;
    const { job, alternative, index, centre } = operations[id]!;
    const { segments } = problem.jobs[job]!.alternatives[alternative]!.operations[index]!;
    return holdsOf({ centreOpen: problem.centres[centre]!.open, segments }, slotCount, startSlot, this.calendars);
  }
}

function copyOf({ order, notBefore, chosen, repairs }: Genotype): Genotype {
  return { order: order.slice(), notBefore: notBefore.slice(), chosen: chosen.slice(), repairs: repairs.slice() };
}

function copyInto(from: Genotype, to: Genotype): void {
  to.order.set(from.order);
  to.notBefore.set(from.notBefore);
  to.chosen.set(from.chosen);
  to.repairs.set(from.repairs);
}
