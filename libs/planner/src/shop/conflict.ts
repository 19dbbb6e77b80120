import type { SeededRandom } from '@archwright/kernel';
import type { LagNetwork } from './lag-network.js';
import type { Project } from './project.js';

const SETS_PER_PEAK = 3;

/** `earlier` ends before `later` starts; `slack` is how far the lags would let `later` start before that. */
export interface Resolver {
  readonly earlier: number;
  readonly later: number;
  readonly slack: number;
}

/**
 * Looks for a time at which the earliest starts take more places than there are. Of the smallest sets that are too many
 * there, those that are hardest to resolve are returned as their resolvers: one of them holds in every plan.
 *
 * @returns null where the earliest starts are a plan; an empty list where nothing can resolve the conflict
 */
export function hardestConflict(project: Project, network: LagNetwork, random: SeededRandom): Resolver[] | null {
  const { activities, capacities } = project;
  let hardest: Resolver[] | null = null;
  let leastSlack = Infinity;
  for (let at = 0; at < activities.length; at++) {
    if (activities[at]!.duration === 0) continue;
    const running = runningAt(project, network, network.earliest(at));
    for (let resource = 0; resource < capacities.length; resource++) {
      const need = (id: number): number => activities[id]!.needs[resource]!;
      if (running.reduce((sum, id) => sum + need(id), 0) <= capacities[resource]!) continue;
      for (let round = 0; round < SETS_PER_PEAK; round++) {
        const resolvers = resolversOf(project, network, smallestSet(running, need, capacities[resource]!, random));
        if (resolvers.length === 0) return resolvers;
        const slack = resolvers.reduce((most, resolver) => Math.max(most, resolver.slack), 0);
        const isHarder = slack < leastSlack || (slack === leastSlack && resolvers.length < (hardest?.length ?? 0));
        if (hardest !== null && !isHarder) continue;
        hardest = resolvers;
        leastSlack = slack;
      }
    }
  }
  return hardest;
}

function runningAt({ activities }: Project, network: LagNetwork, now: number): number[] {
  const running: number[] = [];
  for (let id = 0; id < activities.length; id++) {
    const start = network.earliest(id);
    if (start <= now && now < start + activities[id]!.duration) running.push(id);
  }
  return running;
}

/** Random activities until they are too many, then without those that are not needed for that. */
function smallestSet(
  running: readonly number[],
  need: (id: number) => number,
  capacity: number,
  random: SeededRandom,
): number[] {
  const left = running.filter((id) => need(id) > 0);
  const set: number[] = [];
  let used = 0;
  while (used <= capacity) {
    const [id] = left.splice(random.nextBelow(left.length), 1);
    set.push(id!);
    used += need(id!);
  }
  return set.filter((id) => {
    const isNeeded = used - need(id) <= capacity;
    if (!isNeeded) used -= need(id);
    return isNeeded;
  });
}

function resolversOf({ activities }: Project, network: LagNetwork, set: readonly number[]): Resolver[] {
  return set.flatMap((earlier) =>
    set.flatMap((later) => {
      const { duration } = activities[earlier]!;
      if (earlier === later || !network.allows(earlier, later, duration)) return [];
      return [{ earlier, later, slack: -network.between(later, earlier) - duration }];
    }),
  );
}
