import type { Project } from './project.js';

/** A project whose lags run one way only, as flat arrays, seen forward or backward in time. */
export interface ProjectLayout {
  readonly count: number;
  readonly resourceCount: number;
  readonly capacities: Int32Array;
  readonly duration: Int32Array;
  /** Needed resources of an activity and the places: `[needsFrom[id] .. needsFrom[id + 1])`. */
  readonly needsFrom: Int32Array;
  readonly neededResource: Int32Array;
  readonly neededPlaces: Int32Array;
  /** What has to start before an activity, and how much: `[lagsFrom[id] .. lagsFrom[id + 1])`. */
  readonly lagsFrom: Int32Array;
  readonly lagOf: Int32Array;
  readonly lag: Int32Array;
  /** Place in one topological order. */
  readonly rank: Int32Array;
  /** Duration times places, over all resources: what a late end of it costs. */
  readonly work: Float64Array;
  /** All durations and waits in a row: no decoded plan is longer. */
  readonly horizon: number;
}

/** Activities so that each comes after all that it waits for; null when some wait for one another. */
export function topologicalOrder({ activities, lags }: Project): number[] | null {
  const open = new Int32Array(activities.length);
  const followers: number[][] = activities.map(() => []);
  for (const { from, to } of lags) {
    open[to]!++;
    followers[from]!.push(to);
  }
  const order = activities.map((_, at) => at).filter((at) => open[at] === 0);
  for (let at = 0; at < order.length; at++) {
    for (const follower of followers[order[at]!]!) if (--open[follower]! === 0) order.push(follower);
  }
  return order.length === activities.length ? order : null;
}

/** The same project with time running backward: what was the wait from start to start becomes one from end to end. */
export function reversed({ capacities, activities, lags }: Project): Project {
  return {
    capacities,
    activities,
    lags: lags.map(({ from, to, lag }) => ({
      from: to,
      to: from,
      lag: lag + activities[to]!.duration - activities[from]!.duration,
    })),
  };
}

export function layOutProject(project: Project, order: readonly number[]): ProjectLayout {
  const { capacities, activities, lags } = project;
  const count = activities.length;
  const needsFrom = new Int32Array(count + 1);
  const needed: [number, number][] = [];
  activities.forEach(({ duration, needs }, id) => {
    needs.forEach((places, resource) => {
      if (places > 0 && duration > 0) needed.push([resource, places]);
    });
    needsFrom[id + 1] = needed.length;
  });
  const lagsFrom = new Int32Array(count + 1);
  for (const { to } of lags) lagsFrom[to + 1]!++;
  for (let id = 0; id < count; id++) lagsFrom[id + 1]! += lagsFrom[id]!;
  const next = lagsFrom.slice();
  const lagOf = new Int32Array(lags.length);
  const lag = new Int32Array(lags.length);
  for (const each of lags) {
    const at = next[each.to]!++;
    lagOf[at] = each.from;
    lag[at] = each.lag;
  }
  const rank = new Int32Array(count);
  order.forEach((id, at) => (rank[id] = at));
  return {
    count,
    resourceCount: capacities.length,
    capacities: Int32Array.from(capacities),
    duration: Int32Array.from(activities, ({ duration }) => duration),
    needsFrom,
    neededResource: Int32Array.from(needed, ([resource]) => resource),
    neededPlaces: Int32Array.from(needed, ([, places]) => places),
    lagsFrom,
    lagOf,
    lag,
    rank,
    work: Float64Array.from(activities, ({ duration, needs }) => duration * needs.reduce((sum, need) => sum + need, 0)),
    horizon:
      activities.reduce((sum, { duration }) => sum + duration, 0) +
      lags.reduce((sum, each) => sum + Math.max(0, each.lag - activities[each.from]!.duration), 0),
  };
}
