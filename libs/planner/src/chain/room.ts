import { andInto, emptyBits, erode, orInto } from './bits.js';
import type { ChainCache } from './cache.js';
import type { ChainResource, SlotBits, VisitOption } from './model.js';

/** Starts from which `length` slots are free. */
export function startsOf(cache: ChainCache): (free: SlotBits, length: number) => SlotBits {
  return (free, length) => cache.get(`erode:${cache.id(free)}:${length}`, () => erode(free, length));
}

/** Starts for which one resource of several is free throughout. */
export function anyFree(
  resources: readonly ChainResource[],
  length: number,
  slotCount: number,
  cache: ChainCache,
): SlotBits {
  const ids = resources.map(({ free }) => cache.id(free)).join(',');
  return cache.get(`any:${String(slotCount)}:${String(length)}:${ids}`, () => {
    const starts = startsOf(cache);
    const out = emptyBits(slotCount);
    for (const { free } of resources) orInto(out, starts(free, length));
    return out;
  });
}

/** Starts of an option for which its clinic has a chair, an assistant and kits; people and wishes left aside. */
export function roomFor(option: VisitOption, slotCount: number, cache: ChainCache): SlotBits {
  const { chairs, assistants, kits, lengthSlots } = option;
  const lists = [chairs, assistants ?? [], ...kits.map(({ units }) => units)];
  const ids = lists.map((list) => list.map(({ free }) => cache.id(free)).join(',')).join(';');
  const away = kits.map(({ reprocessingSlots }) => reprocessingSlots).join(',');
  return cache.get(`room:${slotCount}:${lengthSlots}:${assistants === null ? 0 : 1}:${away}:${ids}`, () => {
    const out = anyFree(chairs, lengthSlots, slotCount, cache).slice();
    if (assistants !== null) andInto(out, anyFree(assistants, lengthSlots, slotCount, cache));
    for (const { units, reprocessingSlots } of kits) {
      andInto(out, anyFree(units, lengthSlots + reprocessingSlots, slotCount, cache));
    }
    return out;
  });
}
