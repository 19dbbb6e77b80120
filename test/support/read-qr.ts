/**
 * Reads a QR code from its modules, written for the tests after ISO/IEC 18004:2015 and sharing nothing with what draws it:
 * versions 1 to 8 at error correction level M, digits, upper-case and byte text, without mending damaged codes.
 *
 * @param modules row by row, true for dark
 * @throws {Error} for anything else, so that a code outside of this is not taken for read
 */
export function readQr(modules: readonly (readonly boolean[])[]): string {
  const size = modules.length;
  const version = (size - 17) / 4;
  const blocks = BLOCKS[version - 1];
  if (blocks === undefined) throw new Error(`A code of ${String(size)} modules is none of versions 1 to 8.`);
  const dark = (row: number, column: number): number => (modules[row]?.[column] === true ? 1 : 0);
  const format = readFormat(dark);
  if (format >> 3 !== LEVEL_M) throw new Error('The code is not at error correction level M.');
  const isMasked = MASKS[format & 7];
  if (isMasked === undefined) throw new Error('The code names no mask.');

  const codewords: number[] = [];
  let bits = 0;
  let filled = 0;
  for (const [row, column] of readingOrder(size, version)) {
    const bit = dark(row, column) ^ (isMasked(row, column) ? 1 : 0);
    bits = (bits << 1) | bit;
    if (++filled === 8) {
      codewords.push(bits);
      [bits, filled] = [0, 0];
    }
  }
  return textOf(inBlockOrder(codewords, blocks), version);
}

/** Level M by the standard's code for it. */
const LEVEL_M = 0b00;

/** Data codewords of each block at level M, by version from 1. */
const BLOCKS = [[16], [28], [44], [32, 32], [43, 43], [27, 27, 27, 27], [31, 31, 31, 31], [38, 38, 39, 39]];

/** Centres of the alignment patterns by version from 1. */
const ALIGNMENT = [[], [6, 18], [6, 22], [6, 26], [6, 30], [6, 34], [6, 22, 38], [6, 24, 42]];

const MASKS: readonly ((row: number, column: number) => boolean)[] = [
  (i, j) => (i + j) % 2 === 0,
  (i) => i % 2 === 0,
  (_, j) => j % 3 === 0,
  (i, j) => (i + j) % 3 === 0,
  (i, j) => (Math.floor(i / 2) + Math.floor(j / 3)) % 2 === 0,
  (i, j) => ((i * j) % 2) + ((i * j) % 3) === 0,
  (i, j) => (((i * j) % 2) + ((i * j) % 3)) % 2 === 0,
  (i, j) => (((i + j) % 2) + ((i * j) % 3)) % 2 === 0,
];

/** Level and mask, the five bits in front of their check bits. */
function readFormat(dark: (row: number, column: number) => number): number {
  const along = [0, 1, 2, 3, 4, 5, 7, 8].map((column) => dark(8, column));
  const down = [7, 5, 4, 3, 2, 1, 0].map((row) => dark(row, 8));
  return ([...along, ...down].reduce((bits, bit) => (bits << 1) | bit, 0) ^ 0b101010000010010) >> 10;
}

/** Two columns at a time from the right, up and down in turn, past everything that carries no data. */
function readingOrder(size: number, version: number): [number, number][] {
  const order: [number, number][] = [];
  let isUpward = true;
  for (let right = size - 1; right > 0; right -= 2) {
    if (right === 6) right = 5;
    for (let step = 0; step < size; step++) {
      const row = isUpward ? size - 1 - step : step;
      for (const column of [right, right - 1]) if (!isFixed(row, column, size, version)) order.push([row, column]);
    }
    isUpward = !isUpward;
  }
  return order;
}

function isFixed(row: number, column: number, size: number, version: number): boolean {
  if (row === 6 || column === 6) return true;
  const atStart = (place: number) => place <= 8;
  const atEnd = (place: number) => place >= size - 8;
  if ((atStart(row) && (atStart(column) || atEnd(column))) || (atEnd(row) && atStart(column))) return true;
  if (version >= 7 && ((row < 6 && column >= size - 11) || (column < 6 && row >= size - 11))) return true;
  const centres = ALIGNMENT[version - 1] ?? [];
  const last = centres.at(-1) ?? 0;
  return centres.some((y) =>
    centres.some((x) => {
      const isFinder = (x === 6 && y === 6) || (x === 6 && y === last) || (x === last && y === 6);
      return !isFinder && Math.abs(row - y) <= 2 && Math.abs(column - x) <= 2;
    }),
  );
}

/** Codewords of the blocks are dealt out in turn; the shorter blocks sit out the last round. */
function inBlockOrder(codewords: readonly number[], lengths: readonly number[]): number[] {
  const blocks = lengths.map((): number[] => []);
  let next = 0;
  for (let round = 0; round < Math.max(...lengths); round++) {
    blocks.forEach((block, index) => {
      if (round < (lengths[index] ?? 0)) block.push(codewords[next++] ?? 0);
    });
  }
  return blocks.flat();
}

const UPPER_CASE = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:';

function textOf(data: readonly number[], version: number): string {
  if (version > 9) throw new Error('Longer counts are not read.');
  let at = 0;
  const take = (count: number): number => {
    let value = 0;
    for (let index = 0; index < count; index++, at++)
      value = (value << 1) | (((data[at >> 3] ?? 0) >> (7 - (at & 7))) & 1);
    return value;
  };
  let text = '';
  while (at + 4 <= data.length * 8) {
    const mode = take(4);
    if (mode === 0b0000) return text;
    if (mode === 0b0100) {
      for (let left = take(8); left > 0; left--) text += String.fromCharCode(take(8));
    } else if (mode === 0b0010) {
      let left = take(9);
      for (; left > 1; left -= 2) {
        const pair = take(11);
        text += `${UPPER_CASE[Math.floor(pair / 45)] ?? ''}${UPPER_CASE[pair % 45] ?? ''}`;
      }
      if (left === 1) text += UPPER_CASE[take(6)] ?? '';
    } else if (mode === 0b0001) {
      let left = take(10);
      for (; left >= 3; left -= 3) text += String(take(10)).padStart(3, '0');
      if (left === 2) text += String(take(7)).padStart(2, '0');
      if (left === 1) text += String(take(4));
    } else {
      throw new Error(`The code has a part of an unknown kind (${String(mode)}).`);
    }
  }
  return text;
}
