import { linkSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { DomainError } from '@archwright/kernel';

/** The only source of "now" outside the pure libs; an injectable token, so that tests choose the time. */
export abstract class Clock {
  /** Milliseconds since 1970-01-01T00:00:00Z. */
  abstract nowMs(): number;

  now(): Date {
    return new Date(this.nowMs());
  }
}

/** The machine's clock, or the same clock moved so that it showed `startsAt` when the process started. */
export class SystemClock extends Clock {
  private readonly offsetMs: number;

  constructor(startsAt: string | null = null) {
    super();
    this.offsetMs = startsAt === null ? 0 : Date.parse(startsAt) - Date.now();
  }

  nowMs(): number {
    return Date.now() + this.offsetMs;
  }
}

export class ClockBackwardsError extends DomainError {
  constructor(now: Date, wanted: Date) {
    super(
      'platform.clock-backwards',
      `The demonstration's clock shows ${now.toISOString()} and moves forward only; ${wanted.toISOString()} is past. Give a later instant.`,
      { now: now.toISOString(), wanted: wanted.toISOString() },
    );
  }
}

/** Other processes see a move of the clock after this long at the latest. */
const READ_AGAIN_AFTER_MS = 100;

/**
 * The demonstration's clock: the machine's, ahead by what a file says, so that all processes that name the same file
 * agree. It moves forward only, while it runs and over restarts.
 */
export class SharedClock extends Clock {
  /** Null before the first read. */
  private aheadMs: number | null = null;
  private readAtMs = -Infinity;

  /**
   * @param path of the file, which need not exist yet
   * @param startsAt what the clock shows when it is made for the first time; null for the machine's time
   */
  constructor(
    private readonly path: string,
    startsAt: string | null = null,
  ) {
    super();
    if (startsAt !== null) writeUnlessThere(path, Date.parse(startsAt) - Date.now());
  }

  nowMs(): number {
    if (performance.now() - this.readAtMs >= READ_AGAIN_AFTER_MS) this.read();
    return Date.now() + (this.aheadMs ?? 0);
  }

  /** @throws {ClockBackwardsError} when the instant is past */
  moveTo(instant: Date): void {
    this.read();
    const now = this.now();
    if (instant < now) throw new ClockBackwardsError(now, instant);
    const beside = `${this.path}.${String(process.pid)}`;
    writeFileSync(beside, String(instant.getTime() - Date.now()));
    renameSync(beside, this.path);
    this.read();
  }

  /** A reader that comes while the file is replaced sees the old one or the new one, whole. */
  private read(): void {
    this.readAtMs = performance.now();
    const aheadMs = Number(textOf(this.path) ?? '0');
    this.aheadMs = Math.max(this.aheadMs ?? aheadMs, aheadMs);
  }
}

function textOf(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}

/** Linked into place whole, so that of several processes the first one sets the clock for all. */
function writeUnlessThere(path: string, aheadMs: number): void {
  const beside = `${path}.${String(process.pid)}`;
  writeFileSync(beside, String(aheadMs));
  try {
    linkSync(beside, path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  } finally {
    rmSync(beside);
  }
}
