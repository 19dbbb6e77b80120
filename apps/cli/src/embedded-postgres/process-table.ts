import { existsSync, readFileSync } from 'node:fs';

/** Whether a process with this number lives, ours or somebody else's. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/** Command line of a live process where the machine tells it (Linux), else undefined. */
export function commandLineOf(pid: number): string | undefined {
  const path = `/proc/${String(pid)}/cmdline`;
  return existsSync(path) ? readFileSync(path, 'utf8').replaceAll('\0', ' ') : undefined;
}

/** Waits until the process is gone; false when it still lives after `withinMs`. */
export async function isGoneWithin(pid: number, withinMs: number): Promise<boolean> {
  for (let waitedMs = 0; waitedMs < withinMs; waitedMs += 50) {
    if (!isAlive(pid)) return true;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return !isAlive(pid);
}
