import type { SeededRandom } from '@archwright/kernel';
import { Branching } from './branch.js';
import { destructiveBound } from './destructive-bound.js';
import { LagNetwork, lagNetworkOf } from './lag-network.js';
import type { Project } from './project.js';
import { Propagation } from './propagate.js';

/** The network holds a number for each pair of activities and takes every lag through all of them. */
const MOST_ACTIVITIES = 150;
const FIRST_FAILS = 50;

/** Dead ends of one try, so that an epoch stays under a second or so: each costs about the square of the activities. */
export function mostFailsFor({ activities }: Project): number {
  return Math.ceil(2_000_000 / Math.max(1, activities.length) ** 2);
}

/** Tries to prove a plan of a project best, with a limit that doubles from try to try. */
export class ProjectProof {
  lowerBound: number;
  private readonly base: LagNetwork;
  private readonly root: LagNetwork;
  private readonly propagation: Propagation;
  private readonly branching: Branching;
  private mostFails = FIRST_FAILS;

  /** @param makespan of a plan; none of those asked for is longer */
  private constructor(project: Project, base: LagNetwork, random: SeededRandom, least: number, makespan: number) {
    this.base = base;
    this.root = new LagNetwork(project);
    this.propagation = new Propagation(project, makespan);
    this.branching = new Branching(project, this.propagation, random);
    this.lowerBound = destructiveBound(base, this.propagation, least, makespan);
  }

  /** Null where the project is too large for it. */
  static of(project: Project, random: SeededRandom, least: number, makespan: number): ProjectProof | null {
    const base = project.activities.length <= MOST_ACTIVITIES ? lagNetworkOf(project) : null;
    return base === null ? null : new ProjectProof(project, base, random, least, makespan);
  }

  /** Looks for a plan that ends before `makespan`, the shortest known; raises the bound to it when there is none. */
  attempt(makespan: number): Int32Array | null {
    this.root.copy(this.base);
    const isOpen = this.root.endBy(makespan - 1) && this.propagation.run(this.root);
    const outcome = isOpen ? this.branching.explore(this.root, this.mostFails) : 'none';
    this.mostFails = Math.min(2 * this.mostFails, mostFailsFor(this.base.project));
    if (outcome === 'none') this.lowerBound = makespan;
    return outcome === 'found' ? this.branching.starts : null;
  }
}
