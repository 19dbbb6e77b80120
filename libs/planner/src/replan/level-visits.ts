import { seededRandom, type SeededRandom } from '@archwright/kernel';
import type { ChainProblem } from '../chain/model.js';
import type { WorkloadAim } from '../workload/objective.js';
import { CentreLoad, type LevelCentre } from './centre-load.js';
import { givenUp, planned, type Draft, type JointPlanner } from './draft.js';
import { overlap } from './ejection.js';
import { joinedTime, timeOf, type HeldTime } from './held-time.js';
import type { CaseChange } from './joint-case.js';
import { compareLevels, movedSteps, standingAfter, type CaseStanding, type LevelObjective } from './level-objective.js';
import { inAnyOrder } from './neighbourhood.js';

/** Most cases that are taken out and planned again at once. */
const MOST_TAKEN_OUT = 4;
/** Rounds in a row that find nothing better, after which the search ends. */
const IDLE_ROUNDS = 60;
/** No case has this key. */
const FULL_DAYS = '(full days)';

/** Cases whose free visits may be chosen again, and the laboratory that this is to relieve. */
export interface LevelQuestion {
  /** The cases that take part are the question's `broken`; a visit that is not free has one start in its problem. */
  readonly planner: JointPlanner;
  readonly centres: readonly LevelCentre[];
  readonly dayOfSlot: Int32Array;
  /** By case that takes part. */
  readonly present: ReadonlyMap<string, CaseStanding>;
}

export interface LevelSettings {
  readonly seed: number;
  /** Which of several independent searches it is. */
  readonly stream: number;
  readonly aim: WorkloadAim;
}

/** New plans of the cases that change, and how everything then stands. */
export interface LevelPlan {
  readonly objective: LevelObjective;
  readonly changes: ReadonlyMap<string, CaseChange>;
}

/**
 * Chooses free visits of several cases again so that work is less late and days are less full. A round takes out a case
 * that is late or lies on an overfull day, with some of those in its way, and plans each exactly beside all others by its
 * mildest change, as if days that it would overfill were closed to it; it is kept if the objective becomes smaller. A
 * function of question, settings and number of rounds.
 */
export class VisitLevelling {
  private readonly keys: readonly string[];
  private readonly load: CentreLoad;
  private readonly random: SeededRandom;
  private readonly wishes = new Map<string, HeldTime | null>();
  private readonly least = new Map<string, ReadonlyMap<string, number>>();
  private readonly tried = new Set<string>();
  private draft: Draft;
  private stands: LevelObjective;
  private idle = 0;
  private done = 0;

  constructor(
    private readonly question: LevelQuestion,
    private readonly settings: LevelSettings,
  ) {
    const { planner, centres, dayOfSlot } = question;
    this.keys = [...planner.cases.keys()];
    const strangers = [...planner.question.held].filter(([key]) => !planner.cases.has(key)).map(([, time]) => time);
    this.load = new CentreLoad(centres, dayOfSlot, joinedTime(strangers));
    this.random = seededRandom(settings.seed, settings.stream);
    this.draft = planner.start();
    this.stands = this.judge(this.draft);
  }

  /** Rounds so far. */
  get rounds(): number {
    return this.done;
  }

  /** Nothing is late and no day overfull, or the last many rounds have found nothing. */
  get isDone(): boolean {
    return this.idle >= IDLE_ROUNDS || (this.stands.lateness === 0 && this.stands.overload === 0);
  }

  get best(): LevelPlan {
    return { objective: this.stands, changes: this.draft.changes };
  }

  runRound(): void {
    this.done++;
    this.idle++;
    const again = this.choose();
    if (again === null) return;
    const avoidsFullDays = this.settings.aim === 'level-load' || this.random.nextBelow(2) === 0;
    const name = [...again, String(avoidsFullDays)].join(' ');
    if (this.tried.has(name)) return;
    this.tried.add(name);
    const trial = this.planAgain(again, avoidsFullDays);
    if (trial === null) return;
    const objective = this.judge(trial);
    if (compareLevels(objective, this.stands, this.settings.aim) >= 0) return;
    [this.draft, this.stands, this.idle] = [trial, objective, 0];
    this.tried.clear();
  }

  /** Which cases are planned again, in this order: one that could gain, then some of those in its way or any others. */
  private choose(): string[] | null {
    const load = this.load.of(this.draft.held.values());
    const troubled = this.keys.filter(
      (key) => this.isLate(key) || this.isOnFullDay(key, load) || this.movedVisitsOf(key) > 0,
    );
    const late = troubled.filter((key) => this.isLate(key));
    const from = late.length > 0 && this.random.nextBelow(4) > 0 ? late : troubled;
    const first = from[this.random.nextBelow(Math.max(1, from.length))];
    if (first === undefined) return null;
    const inTheWay = this.inTheWayOf(first);
    const rest = this.keys.filter((key) => key !== first && !inTheWay.includes(key));
    const others = [...inAnyOrder(inTheWay, this.random), ...inAnyOrder(rest, this.random)];
    return [first, ...others.slice(0, this.random.nextBelow(MOST_TAKEN_OUT))];
  }

  private isLate(key: string): boolean {
    return !this.draft.changes.has(key) && (this.question.present.get(key)?.lateness ?? 0) > 0;
  }

  private movedVisitsOf(key: string): number {
    return this.draft.changes.get(key)?.plan.movedVisits ?? 0;
  }

  private isOnFullDay(key: string, load: Int32Array): boolean {
    const held = this.draft.held.get(key);
    return held !== undefined && this.load.isOnFullDay(held, load);
  }

  /** Cases that take part and hold what it would take if none of them held anything. */
  private inTheWayOf(key: string): string[] {
    const { planner } = this.question;
    let wish = this.wishes.get(key);
    if (wish === undefined) {
      const change = planner.change(key, givenUp(planner.start(), this.keys));
      wish = change === null ? null : timeOf(change.plan);
      this.wishes.set(key, wish);
    }
    if (wish === null) return [];
    const wanted = wish;
    return this.keys.filter(
      (other) => other !== key && overlap(wanted, this.draft.held.get(other) ?? new Map<string, never>()),
    );
  }

  private planAgain(again: readonly string[], avoidsFullDays: boolean): Draft | null {
    const { planner } = this.question;
    let draft = givenUp(this.draft, again);
    for (const key of again) {
      const change =
        (avoidsFullDays ? planner.change(key, this.withoutFullDays(key, draft)) : null) ?? planner.change(key, draft);
      // Who has no plan keeps what it has now, which others may have taken.
      if (change === null) return null;
      draft = planned(draft, key, change);
    }
    return draft;
  }

  private withoutFullDays(key: string, draft: Draft): Draft {
    let least = this.least.get(key);
    if (least === undefined) {
      least = leastWork(this.question.planner.caseOf(key).problem);
      this.least.set(key, least);
    }
    const full = this.load.fullTime(this.load.of(draft.held.values()), least);
    return { ...draft, held: new Map(draft.held).set(FULL_DAYS, full) };
  }

  private judge({ changes, held }: Draft): LevelObjective {
    const { planner, present } = this.question;
    const sums = { lateness: 0, movedVisits: 0, movedSteps: 0, inProgress: 0 };
    for (const key of this.keys) {
      const change = changes.get(key);
      const standing = change === undefined ? present.get(key) : standingAfter(change);
      sums.lateness += standing?.lateness ?? 0;
      sums.inProgress += standing?.inProgress ?? 0;
      if (change === undefined) continue;
      sums.movedVisits += change.plan.movedVisits;
      sums.movedSteps += movedSteps(planner.caseOf(key), change);
    }
    return { ...sums, overload: this.load.overloadOf(this.load.of(held.values())) };
  }
}

/** By centre: slots that the shortest piece of a case's work takes of a place. */
function leastWork({ phases }: ChainProblem): Map<string, number> {
  const least = new Map<string, number>();
  for (const { centre, segments } of phases.flatMap(({ labs }) => labs.flatMap(({ operations }) => operations))) {
    const slots = segments.reduce((sum, each) => sum + (each.holdsPlace ? each.slots : 0), 0);
    if (slots > 0) least.set(centre, Math.min(least.get(centre) ?? slots, slots));
  }
  return least;
}
