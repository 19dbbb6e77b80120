import { randomBytes } from 'node:crypto';

/** Low enough at the start of a millisecond that what follows in it does not run over twelve bits. */
const FIRST_COUNT = 0x7ff;

let lastMs = 0;
let count = 0;

/**
 * A new identifier (RFC 9562, section 5.7): 48 bits of Unix milliseconds, a counter that starts anywhere in each
 * millisecond (section 6.2, method 1), 62 random bits. Rows that one process makes later sort later; those of several
 * processes by about a millisecond.
 */
export function uuidv7(nowMs = Date.now()): string {
  const bytes = randomBytes(16);
  count = nowMs === lastMs ? count + 1 : bytes.readUInt16BE(6) & FIRST_COUNT;
  lastMs = nowMs;
  bytes.writeUIntBE(nowMs, 0, 6);
  bytes.writeUInt16BE(0x7000 | (count & 0xfff), 6);
  bytes[8] = 0x80 | (bytes.readUInt8(8) & 0x3f);
  return bytes.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}
