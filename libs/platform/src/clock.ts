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
