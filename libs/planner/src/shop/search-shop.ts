import { seededRandom, type SeededRandom } from '@archwright/kernel';
import { construct } from './construct.js';
import type { MachineShop, ShopPlan } from './machine-shop.js';
import { distance, relink } from './relink.js';
import type { Search } from './search.js';
import { shopBound } from './shop-bound.js';
import { ShopGraph } from './shop-graph.js';
import { ShopProof } from './shop-proof.js';
import { layOut, type ShopLayout } from './shop-layout.js';
import { copyOrder, emptyOrder, TabuSearch, type ShopOrder } from './tabu-search.js';

const MEMBERS = 10;
/** Parents nearer than this give no way between them. */
const LEAST_DISTANCE = 10;
/** A newcomer nearer than this to a member is its twin. */
const TWIN_DISTANCE = 5;

/**
 * Tabu search from ten plans, then from plans on the way between two of them (path relinking: Peng, Lü & Cheng 2015).
 * An epoch is one run of the tabu search.
 */
export class ShopSearch implements Search<ShopPlan> {
  epochs = 0;
  private readonly layout: ShopLayout;
  private readonly random: SeededRandom;
  private readonly tabuSearch: TabuSearch;
  private readonly proof: ShopProof;
  private readonly members: ShopOrder[] = [];
  private readonly child: ShopOrder;
  private readonly bestOrder: ShopOrder;

  constructor(shop: MachineShop, seed: number, stream = 0) {
    this.layout = layOut(shop);
    this.random = seededRandom(seed, stream);
    this.tabuSearch = new TabuSearch(this.layout, this.random);
    this.child = emptyOrder(this.layout);
    this.bestOrder = emptyOrder(this.layout);
    construct(this.layout, null, this.bestOrder);
    const graph = new ShopGraph(this.layout);
    graph.load(this.bestOrder.list, this.bestOrder.machines);
    this.bestOrder.makespan = graph.makespan;
    this.proof = new ShopProof(this.layout, shopBound(this.layout), graph.makespan);
  }

  get lowerBound(): number {
    return this.proof.lowerBound;
  }

  /** Moves made so far. */
  get moves(): number {
    return this.tabuSearch.moves;
  }

  get makespan(): number {
    return this.bestOrder.makespan;
  }

  get best(): ShopPlan {
    return planOf(this.layout, this.bestOrder);
  }

  runEpoch(): void {
    if (this.bestOrder.makespan <= this.lowerBound) return;
    this.epochs++;
    if (this.members.length < MEMBERS) this.addMember();
    else this.relinkMembers();
    this.proof.advance(this.bestOrder.makespan);
  }

  private addMember(): void {
    const member = emptyOrder(this.layout);
    construct(this.layout, this.members.length === 0 ? null : this.random, member);
    this.improve(member);
    this.members.push(member);
  }

  private relinkMembers(): void {
    const { members, random, child } = this;
    const first = random.nextBelow(MEMBERS);
    const second = (first + 1 + random.nextBelow(MEMBERS - 1)) % MEMBERS;
    if (distance(members[first]!, members[second]!) < LEAST_DISTANCE) {
      const worse = members[first]!.makespan > members[second]!.makespan ? first : second;
      construct(this.layout, random, child);
      this.improve(child);
      copyOrder(child, members[worse]!);
      return;
    }
    relink(members[first]!, members[second]!, random, child);
    this.improve(child);
    this.admit();
  }

  /** The child takes the place of its twin when it is better, else of the worst member when it is no worse. */
  private admit(): void {
    const { members, child } = this;
    const twin = members.find((member) => distance(member, child) < TWIN_DISTANCE);
    if (twin !== undefined) {
      if (child.makespan < twin.makespan) copyOrder(child, twin);
      return;
    }
    const worst = members.reduce((worse, member) => (member.makespan > worse.makespan ? member : worse));
    if (child.makespan <= worst.makespan) copyOrder(child, worst);
  }

  private improve(order: ShopOrder): void {
    this.tabuSearch.improve(order, this.lowerBound);
    if (order.makespan < this.bestOrder.makespan) copyOrder(order, this.bestOrder);
  }
}

function planOf(layout: ShopLayout, order: ShopOrder): ShopPlan {
  const graph = new ShopGraph(layout);
  graph.load(order.list, order.machines);
  const byJob = (valueOf: (id: number) => number): number[][] =>
    Array.from({ length: layout.jobCount }, (_, job) => {
      const slot = layout.slotOfJob[job]!;
      return Array.from({ length: layout.slotOfJob[job + 1]! - slot - 1 }, (_ignored, at) => valueOf(slot + 1 + at));
    });
  return {
    makespan: graph.makespan,
    starts: byJob((id) => graph.end[id]! - graph.duration[id]!),
    machines: byJob((id) => graph.machine[id]!),
  };
}
