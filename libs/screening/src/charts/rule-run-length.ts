import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { Matrix, solve } from 'ml-matrix';
import { multirule, type ControlRule } from './multirule.js';

/** A value in the middle of each zone between the limits that any rule reads; zones at 0, ±1, ±2, ±3. */
const ZONES = [-3.5, -2.5, -1.5, -0.5, 0.5, 1.5, 2.5, 3.5];
const EDGES = [-Infinity, -3, -2, -1, 0, 1, 2, 3, Infinity];
/** How many past values each rule reads, the present one included, and beyond which limit they matter. */
const MEMORY: Readonly<Record<ControlRule, { readonly values: number; readonly limit: number }>> = {
  '1-2s': { values: 1, limit: 2 },
  '1-3s': { values: 1, limit: 3 },
  '2-2s': { values: 2, limit: 2 },
  '2of3-2s': { values: 3, limit: 2 },
  'R-4s': { values: 2, limit: 2 },
  '4-1s': { values: 4, limit: 1 },
  '10-x': { values: 10, limit: 0 },
};

/**
 * The part of a history that can still matter to a rule: for each limit the side of the last values beyond it.
 * Runs on one side are told by their length alone, so that thousands of histories fall into few states.
 */
function stateOf(history: readonly number[], rules: readonly ControlRule[]): string {
  return rules
    .map((rule) => {
      const { values, limit } = MEMORY[rule];
      const sides = history
        .slice(Math.max(0, history.length - values + 1))
        .map((z) => (Math.abs(z) > limit ? Math.sign(z) : 0));
      if (rule === '2of3-2s' || rule === 'R-4s') return sides.join(',');
      const side = sides.at(-1) ?? 0;
      const run = side === 0 ? 0 : sides.length - 1 - sides.findLastIndex((other) => other !== side);
      return String(side * run);
    })
    .join('|');
}

/**
 * Average run length of a set of control rules on independent normal values, from the exact chain of run histories.
 *
 * @param rules without the warning `1-2s`, which rejects nothing
 * @param shift of the mean in standard deviations; 0 gives the false-alarm distance
 * @see Champ & Woodall (1987), Exact results for Shewhart control charts with supplementary runs rules,
 *   Technometrics 29:393-399
 */
export function ruleRunLength(rules: readonly ControlRule[], shift: number): number {
  const active = rules.filter((rule) => rule !== '1-2s');
  const probability = ZONES.map((_, zone) => normalCdf(EDGES[zone + 1]!, shift, 1) - normalCdf(EDGES[zone]!, shift, 1));
  const longest = Math.max(...active.map((rule) => MEMORY[rule].values));
  const index = new Map([[stateOf([], active), 0]]);
  const histories: (readonly number[])[] = [[]];
  const moves: { from: number; to: number; probability: number }[] = [];
  for (let from = 0; from < histories.length; from++) {
    ZONES.forEach((z, zone) => {
      const next = [...histories[from]!, z].slice(-longest);
      if (multirule(next, active).rulesAtEachPoint.at(-1)!.length > 0) return;
      const state = stateOf(next, active);
      const to = index.get(state) ?? histories.push(next) - 1;
      index.set(state, to);
      moves.push({ from, to, probability: probability[zone]! });
    });
  }
  const system = Matrix.eye(histories.length);
  for (const { from, to, probability: p } of moves) system.set(from, to, system.get(from, to) - p);
  return solve(system, Matrix.ones(histories.length, 1)).get(0, 0);
}
