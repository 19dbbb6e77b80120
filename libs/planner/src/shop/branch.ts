import type { SeededRandom } from '@archwright/kernel';
import { hardestConflict, type Resolver } from './conflict.js';
import { LagNetwork } from './lag-network.js';
import type { Propagation } from './propagate.js';
import type { Project } from './project.js';

/** An order of two activities that a plan rests on. */
export interface PostedOrder {
  readonly earlier: number;
  readonly later: number;
}

/** `none` is a proof: every choice was tried. `cut` says nothing. */
export type BranchOutcome = 'found' | 'none' | 'cut';

/**
 * Search by orders: the earliest starts are a plan, or some conflict has to be resolved; each resolver is tried in turn
 * and its opposite holds afterwards.
 */
export class Branching {
  /** Networks looked at so far. */
  nodes = 0;
  /** Of the last plan found. */
  readonly starts: Int32Array;
  readonly posted: PostedOrder[] = [];
  private failsLeft = 0;
  private readonly networks: LagNetwork[] = [];

  constructor(
    private readonly project: Project,
    private readonly propagation: Propagation,
    private readonly random: SeededRandom,
  ) {
    this.starts = new Int32Array(project.activities.length);
  }

  /**
   * @param root whose propagation has been run; left as it is
   * @param mostFails dead ends after which to give up
   */
  explore(root: LagNetwork, mostFails: number): BranchOutcome {
    this.failsLeft = mostFails;
    this.posted.length = 0;
    this.networkAt(0).copy(root);
    return this.descend(0);
  }

  private descend(depth: number): BranchOutcome {
    this.nodes++;
    const network = this.networkAt(depth);
    const resolvers = hardestConflict(this.project, network, this.random);
    if (resolvers?.length === 0) return --this.failsLeft < 0 ? 'cut' : 'none';
    if (resolvers === null) {
      for (let id = 0; id < this.starts.length; id++) this.starts[id] = network.earliest(id);
      return 'found';
    }
    for (const { earlier, later } of this.inTurn(resolvers)) {
      const { duration } = this.project.activities[earlier]!;
      const child = this.networkAt(depth + 1);
      child.copy(network);
      if (child.add(earlier, later, duration) && this.propagation.run(child)) {
        this.posted.push({ earlier, later });
        const outcome = this.descend(depth + 1);
        if (outcome !== 'none') return outcome;
        this.posted.pop();
      } else if (--this.failsLeft < 0) return 'cut';
      // From here on `later` starts before `earlier` ends.
      if (!network.add(later, earlier, 1 - duration)) return 'none';
    }
    return 'none';
  }

  /** The most slack first, shaken by a random half, so that another run goes another way. */
  private inTurn(resolvers: readonly Resolver[]): Resolver[] {
    return resolvers
      .map((resolver) => ({ resolver, value: resolver.slack * (100 + this.random.nextBelow(101)) }))
      .sort((a, b) => b.value - a.value)
      .map(({ resolver }) => resolver);
  }

  private networkAt(depth: number): LagNetwork {
    return (this.networks[depth] ??= new LagNetwork(this.project));
  }
}
