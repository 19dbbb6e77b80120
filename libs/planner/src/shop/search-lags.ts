import { seededRandom, type SeededRandom } from '@archwright/kernel';
import { Branching, type PostedOrder } from './branch.js';
import { destructiveBound } from './destructive-bound.js';
import { LagNetwork, lagNetworkOf } from './lag-network.js';
import { requireRoom } from './project-errors.js';
import type { Project, ProjectPlan } from './project.js';
import { mostFailsFor } from './project-proof.js';
import { Propagation } from './propagate.js';
import type { Search } from './search.js';

/** Networks looked at in an epoch, about: a run that has begun is ended. */
const EPOCH_NODES = 300;
const FIRST_FAILS = 20;
const ROUNDS_PER_PROOF = 50;

/**
 * Search of projects with longest waits: random restarts with growing limits until there is a plan or a proof that
 * there is none, then plans that keep most orders of the best one, and now and then all of them for a proof.
 */
export class LagSearch implements Search<ProjectPlan> {
  lowerBound: number;
  best: ProjectPlan | null = null;
  epochs = 0;
  private readonly random: SeededRandom;
  private readonly branching: Branching;
  private readonly propagation: Propagation;
  private readonly base: LagNetwork | null;
  private readonly root: LagNetwork;
  private readonly trial: LagNetwork;
  private orders: readonly PostedOrder[] = [];
  private rounds = 0;
  private fails = FIRST_FAILS;
  private proofFails = 200;

  /** @throws {NeedAboveCapacityError} when an activity needs more than there is */
  constructor(
    private readonly project: Project,
    seed: number,
    stream = 0,
  ) {
    requireRoom(project);
    this.random = seededRandom(seed, stream);
    const horizon = horizonOf(project);
    this.propagation = new Propagation(project, horizon);
    this.branching = new Branching(project, this.propagation, this.random);
    this.root = new LagNetwork(project);
    this.trial = new LagNetwork(project);
    this.base = lagNetworkOf(project);
    this.lowerBound =
      this.base !== null && this.aimFor(horizon) ? destructiveBound(this.base, this.propagation, 0, horizon) : Infinity;
  }

  get makespan(): number {
    return this.best?.makespan ?? Infinity;
  }

  runEpoch(): void {
    if (this.isProved()) return;
    this.epochs++;
    for (const end = this.branching.nodes + EPOCH_NODES; this.branching.nodes < end && !this.isProved();) {
      if (this.best === null) this.restart();
      else this.improve(this.best);
    }
  }

  private isProved(): boolean {
    return this.makespan <= this.lowerBound;
  }

  private restart(): void {
    this.take(this.branching.explore(this.root, this.fails));
    if (++this.rounds % 4 === 0) this.fails *= 2;
  }

  private improve(best: ProjectPlan): void {
    if (++this.rounds % ROUNDS_PER_PROOF === 0) {
      this.take(this.branching.explore(this.root, this.proofFails));
      this.proofFails = Math.min(2 * this.proofFails, mostFailsFor(this.project));
      return;
    }
    this.trial.copy(this.root);
    const isFree = this.freeActivities(best);
    const dropShare = this.random.nextBelow(16);
    const kept = this.orders.filter(
      ({ earlier, later }) => !isFree[earlier] && !isFree[later] && this.random.nextBelow(100) >= dropShare,
    );
    for (const { earlier, later } of kept) {
      if (!this.trial.add(earlier, later, this.project.activities[earlier]!.duration)) return;
    }
    this.branching.nodes++;
    if (!this.propagation.run(this.trial)) return;
    const outcome = this.branching.explore(this.trial, FIRST_FAILS);
    if (outcome === 'found') this.keep([...kept, ...this.branching.posted]);
  }

  /** Those that touch a random window of the plan, and some others. */
  private freeActivities({ makespan, starts }: ProjectPlan): boolean[] {
    const length = Math.floor((makespan * (7 + this.random.nextBelow(50))) / 100);
    const from = this.random.nextBelow(Math.max(1, makespan - length + 1));
    const share = this.random.nextBelow(21);
    return this.project.activities.map(
      ({ duration }, id) =>
        (starts[id]! < from + length && starts[id]! + duration > from) || this.random.nextBelow(100) < share,
    );
  }

  private take(outcome: 'found' | 'none' | 'cut'): void {
    if (outcome === 'found') this.keep([...this.branching.posted]);
    if (outcome === 'none') this.lowerBound = this.best?.makespan ?? Infinity;
  }

  private keep(orders: readonly PostedOrder[]): void {
    const starts = [...this.branching.starts];
    const makespan = starts.reduce(
      (most, start, id) => Math.max(most, start + this.project.activities[id]!.duration),
      0,
    );
    this.best = { makespan, starts };
    this.orders = orders;
    if (!this.isProved() && !this.aimFor(makespan - 1)) this.lowerBound = makespan;
  }

  /** From now on only plans that end by `makespan` count; false where there is none. */
  private aimFor(makespan: number): boolean {
    this.root.copy(this.base!);
    return this.root.endBy(makespan) && this.propagation.run(this.root);
  }
}

/** All durations and waits in a row: when there is a plan, there is one that ends by then. */
function horizonOf({ activities, lags }: Project): number {
  const longest = activities.map(({ duration }) => duration);
  for (const { from, lag } of lags) longest[from] = Math.max(longest[from]!, lag);
  return longest.reduce((sum, lag) => sum + lag, 0);
}
