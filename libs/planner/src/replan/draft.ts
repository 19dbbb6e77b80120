import { ChainCache } from '../chain/cache.js';
import type { ChainProblem } from '../chain/model.js';
import { joinedTime, timeOf, withHeld, type HeldTime } from './held-time.js';
import type { CaseChange, JointCase } from './joint-case.js';
import { leastChange } from './least-change.js';
import { replanChain, type MovedPlan } from './replan-chain.js';

/** Cases to plan anew, and what everybody holds now. */
export interface JointQuestion {
  /** Cases whose present plan is no longer possible, the most urgent first. */
  readonly broken: readonly JointCase[];
  /** Other cases that may be asked to make room. */
  readonly neighbours: readonly JointCase[];
  /** What each case holds that could move, by its key: those above and all others. */
  readonly held: ReadonlyMap<string, HeldTime>;
}

/** New plans of some cases beside what all others hold. Never changed: every step gives a new draft. */
export interface Draft {
  readonly changes: ReadonlyMap<string, CaseChange>;
  /** What each case that takes part holds, by its new plan where it has one. */
  readonly held: ReadonlyMap<string, HeldTime>;
}

export function planned(draft: Draft, key: string, change: CaseChange): Draft {
  return {
    changes: new Map(draft.changes).set(key, change),
    held: new Map(draft.held).set(key, timeOf(change.plan)),
  };
}

/** The same without what some cases hold: they are to be planned next. */
export function givenUp(draft: Draft, keys: readonly string[]): Draft {
  const changes = new Map(draft.changes);
  const held = new Map(draft.held);
  for (const key of keys) {
    changes.delete(key);
    held.delete(key);
  }
  return { changes, held };
}

/** Plans single cases of a question beside a draft of the others. */
export class JointPlanner {
  readonly cases: ReadonlyMap<string, JointCase>;
  /** What cases hold that take no part. */
  private readonly strangers: HeldTime;
  private readonly besideOthers = new Map<string, ChainProblem>();

  constructor(
    readonly question: JointQuestion,
    readonly cache = new ChainCache(),
  ) {
    const { broken, neighbours } = question;
    this.cases = new Map([...broken, ...neighbours].map((each) => [each.key, each]));
    this.strangers = joinedTime([...question.held].filter(([key]) => !this.cases.has(key)).map(([, time]) => time));
  }

  /** Everybody as they are. */
  start(): Draft {
    const held = [...this.question.held].filter(([key]) => this.cases.has(key));
    return { changes: new Map(), held: new Map(held) };
  }

  caseOf(key: string): JointCase {
    const found = this.cases.get(key);
    if (found === undefined) throw new Error(`No case "${key}" takes part in this question`);
    return found;
  }

  /** The mildest change of a case while everybody else in the draft, and all who take no part, stay; see {@link leastChange}. */
  change(key: string, draft: Draft, mostMoved?: number): CaseChange | null {
    return leastChange(this.caseOf(key), this.problemBeside(key, draft), this.cache, mostMoved);
  }

  /** The same beside this time alone: as if whoever else holds any made room. */
  changeBeside(key: string, held: readonly HeldTime[]): CaseChange | null {
    const joint = this.caseOf(key);
    return leastChange(joint, withHeld(joint.problem, held, this.cache), this.cache);
  }

  /** The plan of a case with the fewest moves beside a draft of the others, wherever its laboratory work goes. */
  fewestMoves(key: string, draft: Draft): MovedPlan | null {
    return this.planWithFewestMoves(key, this.problemBeside(key, draft));
  }

  /**
   * Fewest visits that a case has to move while visits of those who take no part stay, though everybody's laboratory work
   * and all who take part make room; `null` when it has no plan then.
   */
  leastMoved(key: string): number | null {
    const { problem } = this.caseOf(key);
    const places = new Set(placesOf(problem));
    const visitTime = new Map([...this.strangers].filter(([resource]) => !places.has(resource)));
    return this.planWithFewestMoves(key, withHeld(problem, [visitTime], this.cache))?.movedVisits ?? null;
  }

  /** Whether a case has a plan when everybody else makes room. */
  isPossible(key: string): boolean {
    return this.planWithFewestMoves(key, this.caseOf(key).problem) !== null;
  }

  private planWithFewestMoves(key: string, problem: ChainProblem): MovedPlan | null {
    return replanChain(problem, this.caseOf(key).visits, 'fewest-moves', 1, this.cache)[0] ?? null;
  }

  problemBeside(key: string, { held }: Draft): ChainProblem {
    const others = [...held].filter(([other]) => other !== key).map(([, time]) => time);
    return withHeld(this.besideStrangers(key), others, this.cache);
  }

  /** Less what cases hold that take no part; made once, since they never move. */
  private besideStrangers(key: string): ChainProblem {
    let problem = this.besideOthers.get(key);
    if (problem === undefined) {
      problem = withHeld(this.caseOf(key).problem, [this.strangers], this.cache);
      this.besideOthers.set(key, problem);
    }
    return problem;
  }
}

/** Bench places on which a case's work could be done. */
function placesOf({ phases }: ChainProblem): string[] {
  return phases.flatMap(({ labs }) =>
    labs.flatMap(({ operations }) => operations.flatMap(({ places }) => places.map(({ key }) => key))),
  );
}
