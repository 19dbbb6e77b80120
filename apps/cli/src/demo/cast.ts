import { demoClock, loadView } from '@archwright/contracts';
import { ApiSession } from './api-session.js';
import { demoPassword } from './scenario.js';

/** Less than a session lasts. */
const SESSION_MS = 6 * 3_600_000;

/** Something the story promises did not happen. */
export class StoryBroken extends Error {}

export function must<Value>(value: Value | null | undefined, what: string): Value {
  if (value === null || value === undefined) throw new StoryBroken(`expected ${what}`);
  return value;
}

/** The three people of the story, each with a session of their own. */
export class Cast {
  readonly desk: ApiSession;
  readonly clinician: ApiSession;
  readonly bench: ApiSession;

  constructor(url: string, signal: AbortSignal | null = null) {
    this.desk = new ApiSession(url, signal);
    this.clinician = new ApiSession(url, signal);
    this.bench = new ApiSession(url, signal);
  }

  /** What the clock showed when everybody signed in last. */
  private signedInAtMs = 0;

  async signIn(): Promise<void> {
    await this.desk.signIn('desk@example.test', demoPassword);
    await this.clinician.signIn('chair@example.test', demoPassword);
    await this.bench.signIn('bench@example.test', demoPassword);
    this.signedInAtMs = Date.parse(await this.clockNow());
  }

  async clockNow(): Promise<string> {
    const { now } = await this.desk.call({ method: 'GET', path: '/demo/clock', answer: demoClock });
    return now;
  }

  /** Moves on to `to`, if that is still to come; the demo's clock never goes back. */
  async moveClock(to: string): Promise<void> {
    if (Date.parse(to) <= Date.parse(await this.clockNow())) return;
    await this.desk.call({ method: 'PUT', path: '/demo/clock', body: { now: to }, answer: demoClock });
    // Sessions end as the demo's clock moves on.
    if (Date.parse(to) - this.signedInAtMs > SESSION_MS) await this.signIn();
  }
}

/** Minutes booked at each work centre over the coming three weeks. */
export async function labLoad(cast: Cast, laboratoryId: string, from: string): Promise<Map<string, number>> {
  const load = await cast.bench.call({
    method: 'GET',
    path: `/lab/load?laboratoryId=${laboratoryId}&from=${from}&days=28`,
    answer: loadView,
  });
  return new Map(
    load.workCentres.map(({ name, days }) => [name, days.reduce((sum, { bookedMinutes }) => sum + bookedMinutes, 0)]),
  );
}
