import type { SeededRandom } from '@archwright/kernel';
import { AFTER, BEFORE, Neighbourhood } from './neighbourhood.js';
import { ShopGraph } from './shop-graph.js';
import type { ShopLayout } from './shop-layout.js';
import { TabuList } from './tabu-list.js';

/** A run ends after so many moves without a shorter plan. */
const IDLE_MOVES = 5000;
/** Keeps an epoch short where every run goes on improving. */
const MOST_MOVES = 50_000;

/** A plan as a list that respects the jobs and the order on every machine, and the machine of each id. */
export interface ShopOrder {
  makespan: number;
  readonly list: Int32Array;
  readonly machines: Int32Array;
}

export function emptyOrder({ size, operations }: ShopLayout): ShopOrder {
  return {
    makespan: Number.MAX_SAFE_INTEGER,
    list: new Int32Array(operations.length),
    machines: new Int32Array(size),
  };
}

export function copyOrder(from: ShopOrder, to: ShopOrder): void {
  to.makespan = from.makespan;
  to.list.set(from.list);
  to.machines.set(from.machines);
}

/** Improves one plan by moves that a tabu list keeps from being undone (Nowicki & Smutnicki 1996; Zhang et al. 2007). */
export class TabuSearch {
  /** Moves made so far, in all runs. */
  moves = 0;
  private readonly graph: ShopGraph;
  private readonly tabu: TabuList;
  private readonly neighbourhood: Neighbourhood;
  private readonly tenure: number;

  constructor(
    layout: ShopLayout,
    private readonly random: SeededRandom,
  ) {
    this.graph = new ShopGraph(layout);
    this.tabu = new TabuList(layout);
    this.neighbourhood = new Neighbourhood(this.graph, this.tabu, random);
    this.tenure = 10 + Math.floor(layout.jobCount / layout.machineCount);
  }

  /** Replaces `order` by the best plan met on the way; ends early at `bound`, below which there is none. */
  improve(order: ShopOrder, bound: number): void {
    const { graph, neighbourhood, tabu } = this;
    graph.load(order.list, order.machines);
    tabu.clear();
    this.keep(order);
    for (let move = 1, idle = 0; idle < IDLE_MOVES && move <= MOST_MOVES && order.makespan > bound; move++, idle++) {
      if (!neighbourhood.choose(move, order.makespan)) return;
      this.make(move);
      this.moves++;
      if (graph.makespan >= order.makespan) continue;
      this.keep(order);
      idle = 0;
    }
  }

  private keep(order: ShopOrder): void {
    order.makespan = this.graph.makespan;
    order.list.set(this.graph.order);
    order.machines.set(this.graph.machine);
  }

  private make(move: number): void {
    const { graph, tabu } = this;
    const { kind, id, target, machine } = this.neighbourhood;
    const until = move + this.tenure + this.random.nextBelow(1 + (this.tenure >> 1));
    if (kind === AFTER) {
      for (let other = graph.after[id]!; ; other = graph.after[other]!) {
        tabu.forbidOrder(id, other, until);
        if (other === target) break;
      }
      graph.moveAfter(id, target);
    } else if (kind === BEFORE) {
      for (let other = graph.before[id]!; ; other = graph.before[other]!) {
        tabu.forbidOrder(other, id, until);
        if (other === target) break;
      }
      graph.moveBefore(id, target);
    } else {
      tabu.forbidMachine(id, graph.machine[id]!, until);
      graph.moveTo(id, machine, target);
    }
  }
}
