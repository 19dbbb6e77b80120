import type { SeededRandom } from '@archwright/kernel';
import type { ShopOrder } from './tabu-search.js';

/** Places of the operations of an order in its list. */
function ranksOf({ list, machines }: ShopOrder): Int32Array {
  const rank = new Int32Array(machines.length);
  for (let at = 0; at < list.length; at++) rank[list[at]!] = at;
  return rank;
}

/** Pairs of operations that both orders give to one machine in different turn, and operations on different machines. */
export function distance(a: ShopOrder, b: ShopOrder): number {
  const rank = ranksOf(b);
  let count = 0;
  for (let at = 0; at < a.list.length; at++) {
    const id = a.list[at]!;
    const machine = a.machines[id]!;
    if (b.machines[id] !== machine) {
      count++;
      continue;
    }
    for (let later = at + 1; later < a.list.length; later++) {
      const other = a.list[later]!;
      if (a.machines[other] === machine && b.machines[other] === machine && rank[other]! < rank[id]!) count++;
    }
  }
  return count;
}

/**
 * An order on the way from `from` to `guide`, a random 30 to 70 % of their distance away.
 *
 * Neighbours in the list that the guide has the other way round are exchanged. Both lists respect the jobs, so every
 * list in between does, and none wants a repair.
 */
export function relink(from: ShopOrder, guide: ShopOrder, random: SeededRandom, into: ShopOrder): void {
  const rank = ranksOf(guide);
  const share = 30 + random.nextBelow(41);
  const { list, machines } = into;
  list.set(from.list);
  machines.set(from.machines);
  for (const id of list) if (random.nextBelow(100) < share) machines[id] = guide.machines[id]!;
  const wanted = Math.ceil((inversions(list, machines, rank) * share) / 100);
  for (let turned = 0; turned < wanted;) {
    const at = random.nextBelow(list.length - 1);
    const first = list[at]!;
    const second = list[at + 1]!;
    if (rank[first]! < rank[second]!) continue;
    list[at] = second;
    list[at + 1] = first;
    if (machines[first] === machines[second]) turned++;
  }
}

/** Pairs on one machine whose turn differs from their ranks. */
function inversions(list: Int32Array, machines: Int32Array, rank: Int32Array): number {
  let count = 0;
  for (let at = 0; at < list.length; at++) {
    for (let later = at + 1; later < list.length; later++) {
      if (machines[list[at]!] === machines[list[later]!] && rank[list[at]!]! > rank[list[later]!]!) count++;
    }
  }
  return count;
}
