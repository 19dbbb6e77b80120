/** Relaxations that help: by how many steps each, 0 where it is left alone, and what was found with them. */
export interface Helping<Answer> {
  readonly steps: readonly number[];
  readonly answer: Answer;
}

/**
 * The smallest relaxations that help: every single one that does; when none does, every two that do together.
 *
 * A single one is given with its smallest step. Of two, the one declared first has the smallest step with which the other
 * can still help, and the other the smallest step that then helps: with one step less of either there is no answer.
 *
 * @param most largest step of each relaxation, in declared order; 0 for one that is not to be had
 * @param ask what is found with these steps, `null` for nothing; more steps never find less
 * @returns single ones in declared order; pairs by the sum of their steps, then in declared order. Empty when neither one
 * nor two help
 */
export function smallestRelaxations<Answer>(
  most: readonly number[],
  ask: (steps: readonly number[]) => Answer | null,
): Helping<Answer>[] {
  const none = most.map(() => 0);
  const single = most.flatMap((_, at) => smallestStep(most, ask, none, at) ?? []);
  if (single.length > 0 || ask(most) === null) return single;
  return pairsToTry(most, ask)
    .flatMap((pair) => smallestPair(most, ask, pair) ?? [])
    .sort((a, b) => sum(a.steps) - sum(b.steps));
}

type Ask<Answer> = (steps: readonly number[]) => Answer | null;
type Pair = readonly [first: number, second: number];

const sum = (steps: readonly number[]): number => steps.reduce((total, step) => total + step, 0);

/** Halves its way to the smallest step of one relaxation that helps, the others as they are; `null` when none does. */
function smallestStep<Answer>(
  most: readonly number[],
  ask: Ask<Answer>,
  others: readonly number[],
  at: number,
): Helping<Answer> | null {
  let helps = most[at]!;
  if (helps === 0) return null;
  let answer = ask(others.with(at, helps));
  if (answer === null) return null;
  let fails = 0;
  while (helps - fails > 1) {
    const step = (helps + fails) >>> 1;
    const found = ask(others.with(at, step));
    if (found === null) fails = step;
    else [helps, answer] = [step, found];
  }
  return { steps: others.with(at, helps), answer };
}

/** What cannot be spared even with everything else relaxed belongs to every answer, which leaves few pairs, or none. */
function pairsToTry<Answer>(most: readonly number[], ask: Ask<Answer>): Pair[] {
  const present = most.flatMap((step, at) => (step > 0 ? [at] : []));
  const needed = present.filter((at) => ask(most.with(at, 0)) === null);
  return present
    .flatMap((first, index) => present.slice(index + 1).map((second): Pair => [first, second]))
    .filter((pair) => needed.every((at) => pair.includes(at)));
}

function smallestPair<Answer>(
  most: readonly number[],
  ask: Ask<Answer>,
  [first, second]: Pair,
): Helping<Answer> | null {
  const secondOnly = most.map((step, at) => (at === second ? step : 0));
  const both = smallestStep(most, ask, secondOnly, first);
  return both === null ? null : smallestStep(most, ask, both.steps, second);
}
