import type { SlotBits } from './model.js';

/** All bits clear. */
export function emptyBits(slotCount: number): SlotBits {
  return new Uint32Array((slotCount + 31) >> 5);
}

/** Bits `0 .. slotCount - 1` set. */
export function fullBits(slotCount: number): SlotBits {
  const bits = emptyBits(slotCount);
  setRange(bits, 0, slotCount - 1);
  return bits;
}

export function hasBit(bits: SlotBits, slot: number): boolean {
  return ((bits[slot >> 5]! >>> (slot & 31)) & 1) === 1;
}

export function setBit(bits: SlotBits, slot: number): void {
  bits[slot >> 5]! |= 1 << (slot & 31);
}

/** Sets `first .. last`, both included; nothing when `first > last`. */
export function setRange(bits: SlotBits, first: number, last: number): void {
  if (first > last) return;
  const firstWord = first >> 5;
  const lastWord = last >> 5;
  const head = -1 << (first & 31);
  const tail = -1 >>> (31 - (last & 31));
  if (firstWord === lastWord) {
    bits[firstWord]! |= head & tail;
    return;
  }
  bits[firstWord]! |= head;
  bits.fill(0xffffffff, firstWord + 1, lastWord);
  bits[lastWord]! |= tail;
}

/** Adds to `target` what both sets hold in `first .. last`, both included; `null` holds every bit. */
export function addRange(
  target: SlotBits,
  first: number,
  last: number,
  left: SlotBits | null,
  right: SlotBits | null,
): void {
  if (first > last) return;
  if (left === null) {
    if (right === null) setRange(target, first, last);
    else addRange(target, first, last, right, null);
    return;
  }
  const firstWord = first >> 5;
  const lastWord = Math.min(last >> 5, target.length - 1);
  for (let index = firstWord; index <= lastWord; index++) {
    let word = right === null ? left[index]! : left[index]! & right[index]!;
    if (index === firstWord) word &= -1 << (first & 31);
    if (index === last >> 5) word &= -1 >>> (31 - (last & 31));
    target[index]! |= word;
  }
}

/** The lowest set bit from `from` on (0 or more), or -1. */
export function nextBit(bits: SlotBits, from: number): number {
  let index = from >> 5;
  if (index >= bits.length) return -1;
  let word = bits[index]! & (-1 << (from & 31));
  while (word === 0) {
    if (++index >= bits.length) return -1;
    word = bits[index]!;
  }
  return (index << 5) + 31 - Math.clz32(word & -word);
}

/** The lowest bit from `from` on (0 or more) that both sets hold, or -1; `null` holds every bit. */
export function nextCommonBit(left: SlotBits, right: SlotBits | null, from: number): number {
  if (right === null) return nextBit(left, from);
  let index = from >> 5;
  if (index >= left.length) return -1;
  let word = left[index]! & right[index]! & (-1 << (from & 31));
  while (word === 0) {
    if (++index >= left.length) return -1;
    word = left[index]! & right[index]!;
  }
  return (index << 5) + 31 - Math.clz32(word & -word);
}

/** The highest set bit up to `from`, or -1. */
export function previousBit(bits: SlotBits, from: number): number {
  if (from < 0) return -1;
  let index = from >> 5;
  let word: number;
  if (index >= bits.length) {
    index = bits.length - 1;
    word = bits[index]!;
  } else {
    word = bits[index]! & (-1 >>> (31 - (from & 31)));
  }
  while (word === 0) {
    if (--index < 0) return -1;
    word = bits[index]!;
  }
  return (index << 5) + 31 - Math.clz32(word);
}

/** The highest bit up to `from` that both sets hold, or -1; `null` holds every bit. */
export function previousCommonBit(left: SlotBits, right: SlotBits | null, from: number): number {
  let slot = previousBit(left, from);
  while (slot >= 0 && right !== null && !hasBit(right, slot)) slot = previousBit(left, slot - 1);
  return slot;
}

export function isEmpty(bits: SlotBits): boolean {
  for (const word of bits) if (word !== 0) return false;
  return true;
}

export function andInto(target: SlotBits, other: SlotBits): void {
  for (let index = 0; index < target.length; index++) target[index]! &= other[index]!;
}

export function orInto(target: SlotBits, other: SlotBits): void {
  for (let index = 0; index < target.length; index++) target[index]! |= other[index]!;
}

/** Clears in `target` what is set in `other`. */
export function clearInto(target: SlotBits, other: SlotBits): void {
  for (let index = 0; index < target.length; index++) target[index]! &= ~other[index]!;
}

/**
 * Indexes of words, rising: the only ones that some sets have bits in. A visit's starts lie within opening hours of a few
 * resources, so this is a small part of all words.
 */
export type Words = Int32Array;

/**
 * The words in which at least one of the sets has a bit.
 *
 * @param among the only ones that are looked at; left out: all
 */
export function wordsOf(sets: readonly SlotBits[], among: Words | null = null): Words {
  const length = among?.length ?? sets[0]?.length ?? 0;
  const words = new Int32Array(length);
  let count = 0;
  for (let at = 0; at < length; at++) {
    const index = among === null ? at : among[at]!;
    let any = 0;
    for (const bits of sets) any |= bits[index]!;
    if (any !== 0) words[count++] = index;
  }
  return words.subarray(0, count);
}

/** Writes what both sets hold within `words`; the rest of `target` stays as it is. False when they hold nothing there. */
export function writeCommon(target: SlotBits, left: SlotBits, right: SlotBits, words: Words): boolean {
  let any = 0;
  for (let at = 0; at < words.length; at++) {
    const index = words[at]!;
    any |= target[index] = left[index]! & right[index]!;
  }
  return any !== 0;
}

/** Writes what `left` holds and `right` does not, within `words`. False when there is nothing. */
export function writeRest(target: SlotBits, left: SlotBits, right: SlotBits, words: Words): boolean {
  let any = 0;
  for (let at = 0; at < words.length; at++) {
    const index = words[at]!;
    any |= target[index] = left[index]! & ~right[index]!;
  }
  return any !== 0;
}

/** Adds within `words`. */
export function addWords(target: SlotBits, other: SlotBits, words: Words): void {
  for (let at = 0; at < words.length; at++) {
    const index = words[at]!;
    target[index]! |= other[index]!;
  }
}

/** Whether there is a bit within `words`. */
export function holdsWithin(bits: SlotBits, words: Words): boolean {
  for (let at = 0; at < words.length; at++) if (bits[words[at]!] !== 0) return true;
  return false;
}

export function and(left: SlotBits, right: SlotBits): SlotBits {
  const out = left.slice();
  andInto(out, right);
  return out;
}

/** A copy that keeps `first .. last` only, both included. */
export function within(bits: SlotBits, first: number, last: number): SlotBits {
  const out = new Uint32Array(bits.length);
  if (first > last) return out;
  const firstWord = Math.max(0, first) >> 5;
  const lastWord = Math.min(last >> 5, bits.length - 1);
  for (let index = firstWord; index <= lastWord; index++) out[index] = bits[index]!;
  if (first > 0) out[firstWord]! &= -1 << (first & 31);
  if (last >> 5 === lastWord) out[lastWord]! &= -1 >>> (31 - (last & 31));
  return out;
}

/**
 * Starts from which `length` slots in a row are set.
 *
 * Doubles the run length already covered, so a shift by at most the run length never skips a slot.
 */
export function erode(bits: SlotBits, length: number): SlotBits {
  const out = bits.slice();
  let covered = 1;
  while (covered < length) {
    const step = Math.min(covered, length - covered);
    const words = step >> 5;
    const rest = step & 31;
    // Ascending and in place: a word only reads words at or above itself, which still hold the last round.
    for (let index = 0; index < out.length; index++) {
      const low = out[index + words] ?? 0;
      const shifted = rest === 0 ? low : (low >>> rest) | ((out[index + words + 1] ?? 0) << (32 - rest));
      out[index]! &= shifted;
    }
    covered += step;
  }
  return out;
}

/** Length of the longest run of set bits. */
export function longestRun(bits: SlotBits, slotCount: number): number {
  let longest = 0;
  let run = 0;
  for (let slot = 0; slot < slotCount; slot++) {
    run = hasBit(bits, slot) ? run + 1 : 0;
    if (run > longest) longest = run;
  }
  return longest;
}

/** Set bits within `words` as a rising list. */
export function slotsOf(bits: SlotBits, words: Words = wordsOf([bits])): Int32Array {
  let count = 0;
  for (let at = 0; at < words.length; at++) {
    for (let rest = bits[words[at]!]!; rest !== 0; rest &= rest - 1) count++;
  }
  const out = new Int32Array(count);
  let position = 0;
  for (let at = 0; at < words.length; at++) {
    const index = words[at]!;
    let rest = bits[index]!;
    while (rest !== 0) {
      const low = rest & -rest;
      out[position++] = (index << 5) + 31 - Math.clz32(low);
      rest ^= low;
    }
  }
  return out;
}
