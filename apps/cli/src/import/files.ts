import { readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { callersPath, UsageError } from '../arguments.js';

/**
 * @param path as the caller wrote it
 * @throws {UsageError} when there is no such file, or it is larger than anything that can be imported
 */
export function readInput(path: string, mostBytes: number, usage: string): Buffer {
  const full = callersPath(path);
  try {
    const { size } = statSync(full);
    if (size > mostBytes) {
      const sizes = `has ${String(size)} bytes; at most ${String(mostBytes)} are read. Split it.`;
      throw new UsageError(`${path} ${sizes}`, usage);
    }
    return readFileSync(full);
  } catch (error) {
    if (error instanceof UsageError || !(error instanceof Error)) throw error;
    throw new UsageError(`${path} can't be read: ${error.message}`, usage);
  }
}

/** Writes a file that only its owner may read, whole or not at all. */
export function writeWhole(path: string, text: string): void {
  const full = callersPath(path);
  const beside = `${full}.${String(process.pid)}.new`;
  writeFileSync(beside, text, { mode: 0o600 });
  renameSync(beside, full);
}
