import { randomBytes } from 'node:crypto';

/**
 * A new identifier (RFC 9562, section 5.7): 48 bits of Unix milliseconds, then 74 random bits. Rows made later sort
 * later by about a millisecond; within one millisecond the order is random.
 */
export function uuidv7(nowMs = Date.now()): string {
  const bytes = randomBytes(16);
  bytes.writeUIntBE(nowMs, 0, 6);
  bytes[6] = 0x70 | (bytes.readUInt8(6) & 0x0f);
  bytes[8] = 0x80 | (bytes.readUInt8(8) & 0x3f);
  return bytes.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}
