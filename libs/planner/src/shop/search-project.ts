import { seededRandom, type SeededRandom } from '@archwright/kernel';
import { Breeder, type Individual } from './breed.js';
import { Decoder } from './decoder.js';
import { projectBound } from './project-bound.js';
import { ProjectProof } from './project-proof.js';
import { layOutProject, reversed, topologicalOrder, type ProjectLayout } from './project-layout.js';
import { headsOf } from './project-times.js';
import { requireRoom, UnorderedProjectError } from './project-errors.js';
import type { Project, ProjectPlan } from './project.js';
import { sampleList } from './sample-list.js';
import type { Search } from './search.js';

/** Plans made in an epoch: published results count in thousands. */
export const EPOCH_SCHEDULES = 1000;
const FIRST_MEMBERS = 20;
const MOST_MEMBERS = 1280;
/** A population that has found nothing shorter for so many generations makes room for one twice as large. */
const IDLE_GENERATIONS = 12;

/** One direction of time: its plans, and what decodes lists of it. */
interface Direction {
  readonly layout: ProjectLayout;
  readonly breeder: Breeder;
  readonly decoder: Decoder;
  members: Individual[];
}

/**
 * Genetic search in two populations, one of plans packed to the left, one of plans packed to the right; children of the
 * one are members of the other, so that every plan is justified on its way (after Debels & Vanhoucke 2005). For
 * projects without longest waits.
 */
export class ProjectSearch implements Search<ProjectPlan> {
  lowerBound: number;
  epochs = 0;
  private readonly random: SeededRandom;
  private readonly directions: readonly [Direction, Direction];
  private readonly followers: number[][];
  private readonly latestStart: Int32Array;
  private readonly list: Int32Array;
  private readonly children: [Individual, Individual];
  private readonly bestStarts: Int32Array;
  makespan: number;
  private readonly totalWork: number;
  private readonly proof: ProjectProof | null;
  private size = FIRST_MEMBERS;
  private turn = 0;
  private idleTurns = 0;
  private runBest = Number.MAX_SAFE_INTEGER;

  /**
   * @param countedSchedules plans of an epoch, where plans are counted: then only decoding finds any, and no branching
   * @throws {UnorderedProjectError} when activities wait for one another in a circle
   * @throws {NeedAboveCapacityError} when an activity needs more than there is
   */
  constructor(
    project: Project,
    seed: number,
    stream = 0,
    private readonly countedSchedules: number | null = null,
  ) {
    requireRoom(project);
    const order = topologicalOrder(project);
    if (order === null) throw new UnorderedProjectError();
    this.random = seededRandom(seed, stream);
    const directionOf = (own: Project, ownOrder: readonly number[]): Direction => {
      const layout = layOutProject(own, ownOrder);
      return { layout, breeder: new Breeder(layout, ownOrder), decoder: new Decoder(layout), members: [] };
    };
    const forward = directionOf(project, order);
    const backOrder = [...order].reverse();
    const backward = directionOf(reversed(project), backOrder);
    this.directions = [forward, backward];
    this.followers = project.activities.map(() => []);
    for (const { from, to } of project.lags) this.followers[from]!.push(to);
    const tails = headsOf(backward.layout, backOrder);
    this.latestStart = tails.map((tail, id) => -tail - project.activities[id]!.duration);
    const earliest = Math.min(0, ...this.latestStart);
    for (let id = 0; id < order.length; id++) this.latestStart[id]! -= earliest;
    this.totalWork = Math.max(
      1,
      forward.layout.work.reduce((sum, work) => sum + work, 0),
    );
    this.list = Int32Array.from(order);
    this.bestStarts = new Int32Array(order.length);
    this.makespan = forward.decoder.decode(this.list, this.bestStarts);
    this.children = [emptyIndividual(order.length), emptyIndividual(order.length)];
    this.lowerBound = projectBound(project);
    this.proof = ProjectProof.of(project, this.random, this.lowerBound, this.makespan);
    this.lowerBound = this.proof?.lowerBound ?? this.lowerBound;
  }

  /** Plans made so far. */
  get schedules(): number {
    return this.directions[0].decoder.schedules + this.directions[1].decoder.schedules;
  }

  get best(): ProjectPlan {
    return { makespan: this.makespan, starts: [...this.bestStarts] };
  }

  runEpoch(): void {
    if (this.isProved()) return;
    this.epochs++;
    const most = this.epochs * (this.countedSchedules ?? EPOCH_SCHEDULES);
    // Plans are made two at a time.
    while (this.schedules + 2 <= most && !this.isProved()) {
      if (this.directions[1].members.length < this.size) this.addMember();
      else this.breed();
    }
    // Ever rarer, as each try may take twice as long as the last.
    if ((this.epochs & (this.epochs - 1)) === 0) this.tryProof();
  }

  private tryProof(): void {
    if (this.proof === null || this.countedSchedules !== null || this.isProved()) return;
    const starts = this.proof.attempt(this.makespan);
    this.lowerBound = this.proof.lowerBound;
    if (starts === null) return;
    this.bestStarts.set(starts);
    this.makespan = this.directions[0].layout.duration.reduce(
      (most, duration, id) => Math.max(most, starts[id]! + duration),
      0,
    );
  }

  private isProved(): boolean {
    return this.makespan <= this.lowerBound;
  }

  private addMember(): void {
    const [forward, backward] = this.directions;
    sampleList(forward.layout, this.followers, this.latestStart, this.random, this.list);
    const first = emptyIndividual(this.list.length);
    this.decode(0, first);
    const second = emptyIndividual(this.list.length);
    backward.breeder.mirror(first, this.list);
    this.decode(1, second);
    forward.members.push(first);
    backward.members.push(second);
  }

  /** Two children of one member; the better one replaces the member of the same number in the other population. */
  private breed(): void {
    const { random, children, size } = this;
    const from = this.turn < size ? 0 : 1;
    const to = 1 - from;
    const own = this.directions[from].members;
    const others = this.directions[to]!;
    const at = this.turn % size;
    for (const child of children) {
      const one = own[random.nextBelow(size)]!;
      const another = own[random.nextBelow(size)]!;
      const mate = one.fitness <= another.fitness ? one : another;
      const isFather = random.nextBelow(2) === 0;
      others.breeder.cross(isFather ? own[at]! : mate, isFather ? mate : own[at]!, random, this.list);
      this.decode(to, child);
    }
    const better = children[0].fitness <= children[1].fitness ? 0 : 1;
    const replaced = others.members[at]!;
    const isBest = others.members.every(({ fitness }) => fitness >= replaced.fitness);
    if (!isBest || children[better].fitness <= replaced.fitness) {
      others.members[at] = children[better];
      children[better] = replaced;
    }
    this.turn = (this.turn + 1) % (2 * size);
    if (++this.idleTurns > 2 * IDLE_GENERATIONS * size) this.startLarger();
  }

  private startLarger(): void {
    for (const direction of this.directions) direction.members = [];
    this.size = Math.min(2 * this.size, MOST_MEMBERS);
    this.turn = 0;
    this.idleTurns = 0;
    this.runBest = Number.MAX_SAFE_INTEGER;
  }

  /** Decodes the list in one direction and keeps the plan when it is the shortest so far. */
  private decode(direction: number, into: Individual): void {
    const { decoder, layout } = this.directions[direction]!;
    into.makespan = decoder.decode(this.list, into.starts);
    let lateness = 0;
    for (let id = 0; id < layout.count; id++) lateness += layout.work[id]! * (into.starts[id]! + layout.duration[id]!);
    into.fitness = into.makespan + (0.999 * lateness) / Math.max(1, into.makespan * this.totalWork);
    if (into.makespan < this.runBest) {
      this.runBest = into.makespan;
      this.idleTurns = 0;
    }
    if (into.makespan >= this.makespan) return;
    this.makespan = into.makespan;
    for (let id = 0; id < layout.count; id++) {
      const start = into.starts[id]!;
      this.bestStarts[id] = direction === 0 ? start : into.makespan - start - layout.duration[id]!;
    }
  }
}

function emptyIndividual(count: number): Individual {
  return { makespan: 0, fitness: 0, starts: new Int32Array(count) };
}
