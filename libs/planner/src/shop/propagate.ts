import type { LagNetwork } from './lag-network.js';
import type { Project } from './project.js';

/**
 * What limited places say of the starts: two activities that do not fit beside each other have an order, and nothing
 * starts where others are bound to run (time-table). Repeats until nothing more follows.
 */
export class Propagation {
  /** Pairs that do not fit beside each other, two numbers each. */
  private readonly exclusive: Int32Array;
  private readonly profile: Int32Array;

  /** @param horizon no plan that is asked for ends later */
  constructor(
    private readonly project: Project,
    horizon: number,
  ) {
    const { activities, capacities } = project;
    const pairs: number[] = [];
    activities.forEach((one, first) => {
      activities.slice(first + 1).forEach((other, at) => {
        const isExclusive = capacities.some((capacity, own) => one.needs[own]! + other.needs[own]! > capacity);
        if (isExclusive && one.duration > 0 && other.duration > 0) pairs.push(first, first + 1 + at);
      });
    });
    this.exclusive = Int32Array.from(pairs);
    this.profile = new Int32Array(horizon + 1);
  }

  /** Returns false where no plan is left. */
  run(network: LagNetwork): boolean {
    for (;;) {
      const before = this.sumOf(network);
      if (!this.orderPairs(network)) return false;
      for (let resource = 0; resource < this.project.capacities.length; resource++) {
        if (!this.timeTable(network, resource)) return false;
      }
      if (this.sumOf(network) === before) return true;
    }
  }

  /** Lags only grow, so their sum tells whether any did. */
  private sumOf({ longest }: LagNetwork): number {
    let sum = 0;
    for (let at = 0; at < longest.length; at++) sum += longest[at]!;
    return sum;
  }

  private orderPairs(network: LagNetwork): boolean {
    const { exclusive } = this;
    const { activities } = this.project;
    for (let at = 0; at < exclusive.length; at += 2) {
      const first = exclusive[at]!;
      const second = exclusive[at + 1]!;
      const firstLasts = activities[first]!.duration;
      const secondLasts = activities[second]!.duration;
      const firstLeads = network.allows(first, second, firstLasts);
      const secondLeads = network.allows(second, first, secondLasts);
      if (!firstLeads && !secondLeads) return false;
      if (!secondLeads) network.add(first, second, firstLasts);
      else if (!firstLeads) network.add(second, first, secondLasts);
    }
    return true;
  }

  private timeTable(network: LagNetwork, resource: number): boolean {
    const { profile } = this;
    const { activities, capacities } = this.project;
    const capacity = capacities[resource]!;
    profile.fill(0);
    activities.forEach(({ duration, needs }, id) => {
      const end = network.earliest(id) + duration;
      for (let now = network.latest(id); now < end; now++) profile[now]! += needs[resource]!;
    });
    if (profile.some((used) => used > capacity)) return false;
    for (let id = 0; id < activities.length; id++) {
      const { duration, needs } = activities[id]!;
      const need = needs[resource]!;
      if (need === 0 || duration === 0) continue;
      const earliest = network.earliest(id);
      const latest = network.latest(id);
      // Its own bound part, which the profile holds already, blocks nothing.
      const boundEnd = earliest + duration;
      let start = earliest;
      for (let now = start; now < start + duration && start <= latest; now++) {
        if (profile[now]! + need > capacity && (now < latest || now >= boundEnd)) start = now + 1;
      }
      if (start > latest || (start > earliest && !network.add(network.source, id, start))) return false;
      let end = latest + duration;
      for (let now = end - 1; now >= end - duration && end >= start + duration; now--) {
        if (profile[now]! + need > capacity && (now < latest || now >= boundEnd)) end = now;
      }
      if (end < start + duration) return false;
      if (end < latest + duration && !network.add(id, network.source, duration - end)) return false;
    }
    return true;
  }
}
