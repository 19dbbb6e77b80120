import type { CaseChain, ChainLoop } from './case-chain.js';
import { LoopNotApplicableError, UnknownPartError } from './errors.js';
import type { Arch, Milestone } from './path-schema.js';
import { withSuccessors } from './phase-order.js';
import { positionOf, stepIsToCome, type CaseProgress, type StageRow, type StepRow } from './progress.js';
import { isToCome } from './stage-state.js';

/** What was found, where, for which arches. */
export interface Finding {
  /** Code of a loop of the chain. */
  readonly loop: string;
  /** Stage or lab step at which it was found. */
  readonly foundAt: string;
  readonly arches: readonly Arch[];
  /** Tries already made in this visit; only counts for loops that repeat within the visit. */
  readonly triesMade: number;
}

/** What a loop does to a case. */
export interface LoopOutcome {
  /** The loop that applied: the one asked for, or the one that follows when its tries are used up. */
  readonly loop: string;
  readonly remedy: 'repeat-in-visit' | 'return' | 'healing' | 'quarantine';
  /** Minutes of one more try, for a repeat within the visit; null otherwise. */
  readonly minutesForNextTry: number | null;
  readonly arches: readonly Arch[];
  /** Stages and lab steps to be made again, in chain order. */
  readonly againStages: readonly string[];
  readonly againSteps: readonly string[];
  readonly discards: readonly { readonly object: string; readonly title: string; readonly arches: readonly Arch[] }[];
  readonly progress: CaseProgress;
}

/** Drawn teeth, placed implants and healing that took place are not made again. */
const NOT_REPEATED: readonly Milestone[] = ['extraction', 'surgery', 'healing', 'examination'];

/**
 * Applies a finding: which stages and lab steps are made again, what is discarded. An arch that passed stays passed unless a
 * record that serves both arches is voided.
 *
 * @throws {UnknownPartError} when loop or place are not of this chain
 * @throws {LoopNotApplicableError} when the loop is not found at that place, or its tries are used up and nothing follows
 */
export function applyLoop(chain: CaseChain, progress: CaseProgress, finding: Finding): LoopOutcome {
  const loop = loopOf(chain, finding.loop);
  if (!loop.foundAt.includes(finding.foundAt)) {
    const reason = `it is found at ${loop.foundAt.join(', ')}, not at "${finding.foundAt}".`;
    throw new LoopNotApplicableError(loop.code, reason, { foundAt: finding.foundAt, accepted: loop.foundAt });
  }
  const { remedy } = loop;
  if (remedy.kind === 'repeat-in-visit' && finding.triesMade >= remedy.tries) {
    if (loop.otherwise === null) {
      const reason = `${String(finding.triesMade)} of ${String(remedy.tries)} tries are made and no other loop follows; a clinician decides.`;
      throw new LoopNotApplicableError(loop.code, reason, { triesMade: finding.triesMade, tries: remedy.tries });
    }
    return applyLoop(chain, progress, { ...finding, loop: loop.otherwise });
  }
  const arches = archesVoided(chain, loop, finding.arches);
  const outcome = {
    loop: loop.code,
    remedy: remedy.kind,
    minutesForNextTry: remedy.kind === 'repeat-in-visit' ? remedy.minutesEach : null,
    arches,
    discards: discardsOf(chain, loop, arches),
  };
  if (remedy.kind !== 'return') return { ...outcome, againStages: [], againSteps: [], progress };
  const until = Math.max(positionOf(chain, finding.foundAt), furthestMade(chain, progress, arches));
  const again = partsToRepeat(chain, remedy.to, until, arches);
  const stages = repeatStages(progress.stages, again.stages, arches);
  const steps = repeatSteps(progress.steps, again.steps, arches);
  return {
    ...outcome,
    againStages: again.stages.filter((code) => stages.some((row) => row.code === code && isToCome(row.state))),
    againSteps: again.steps.filter((code) => steps.some((row) => row.code === code && row.state === 'unplanned')),
    progress: { stages, steps },
  };
}

function loopOf(chain: CaseChain, code: string): ChainLoop {
  const loop = chain.loops.find((each) => each.code === code);
  if (loop === undefined)
    throw new UnknownPartError(
      'loop',
      code,
      chain.loops.map((each) => each.code),
    );
  return loop;
}

function archesVoided(chain: CaseChain, loop: ChainLoop, found: readonly Arch[]): Arch[] {
  const voidsShared = loop.discards.some((code) => chain.objects.some((each) => each.code === code && each.shared));
  const all = chain.paths.map((each) => each.arch);
  if (!voidsShared) return all.filter((arch) => found.includes(arch) && loop.arches.includes(arch));
  // A shared record is made at a stage of one arch or of both; the arches of that stage lose it together.
  const shared = loop.discards.flatMap((code) => chain.objects.filter((each) => each.code === code && each.shared));
  const losing = shared.flatMap((object) => chain.stages.find((each) => each.code === object.madeAt)?.arches ?? []);
  return all.filter((arch) => found.includes(arch) || losing.includes(arch));
}

function discardsOf(chain: CaseChain, loop: ChainLoop, arches: readonly Arch[]): LoopOutcome['discards'] {
  return loop.discards.flatMap((code) => {
    const object = chain.objects.find((each) => each.code === code);
    if (object === undefined) return [];
    const own = object.shared ? arches : object.arches.filter((arch) => arches.includes(arch));
    return [{ object: code, title: object.title, arches: own }];
  });
}

/** How far the arches have come: a finding after its visit also voids what has been made on it since. */
function furthestMade(chain: CaseChain, { stages, steps }: CaseProgress, arches: readonly Arch[]): number {
  const counts = (row: StageRow | StepRow) =>
    row.arches.some((arch) => arches.includes(arch) && !row.voided.includes(arch));
  const made = [
    ...stages.filter(({ state }) => state === 'passed' || state === 'in-progress'),
    ...steps.filter(({ state }) => !stepIsToCome(state) && state !== 'discarded' && state !== 'rejected'),
  ].filter(counts);
  return Math.max(-1, ...made.map(({ code }) => positionOf(chain, code)));
}

function partsToRepeat(
  chain: CaseChain,
  to: string,
  until: number,
  arches: readonly Arch[],
): { stages: string[]; steps: string[] } {
  const from = positionOf(chain, to);
  const concerns = (part: { readonly arches: readonly Arch[] }) => part.arches.some((arch) => arches.includes(arch));
  const entry = chain.steps.find((step) => step.code === to);
  const entered =
    entry === undefined
      ? null
      : withSuccessors(
          chain.steps.filter((step) => step.phase === entry.phase),
          to,
        );
  const isBefore = (step: CaseChain['steps'][number]) =>
    entry !== undefined && step.phase === entry.phase
      ? entered?.has(step.code) !== true
      : positionOf(chain, step.code) < from;
  return {
    stages: chain.stages
      .filter((stage) => stage.position >= from && stage.position <= until && concerns(stage))
      // The very stage the loop returns to is made again whatever it is.
      .filter((stage) => stage.code === to || !stage.milestones.every((milestone) => NOT_REPEATED.includes(milestone)))
      .map((stage) => stage.code),
    steps: chain.steps
      .filter((step) => concerns(step) && !isBefore(step) && positionOf(chain, step.code) <= until)
      .map((step) => step.code),
  };
}

function repeatStages(rows: readonly StageRow[], codes: readonly string[], arches: readonly Arch[]): StageRow[] {
  return repeat(rows, codes, arches, {
    isOpen: (row) => isToCome(row.state),
    voidAll: (row) => ({ ...row, state: 'repeated' }),
    fresh: (row, own) => ({ ...row, arches: own, state: 'waiting', voided: [], round: row.round + 1 }),
  });
}

function repeatSteps(rows: readonly StepRow[], codes: readonly string[], arches: readonly Arch[]): StepRow[] {
  return repeat(rows, codes, arches, {
    isOpen: (row) => row.state === 'unplanned' || row.state === 'planned' || row.state === 'ready',
    voidAll: (row) => ({ ...row, state: 'discarded' }),
    fresh: (row, own) => ({ ...row, arches: own, state: 'unplanned', voided: [], round: row.round + 1 }),
  });
}

const ARCHES = ['upper', 'lower'] as const;

interface Row {
  readonly code: string;
  readonly round: number;
  readonly arches: readonly Arch[];
  readonly voided: readonly Arch[];
}

/** Voids the rows that count for the given arches; a row still to come takes them over, else one more row does. */
function repeat<Kind extends Row>(
  rows: readonly Kind[],
  codes: readonly string[],
  arches: readonly Arch[],
  how: {
    isOpen: (row: Kind) => boolean;
    voidAll: (row: Kind) => Kind;
    fresh: (row: Kind, own: readonly Arch[]) => Kind;
  },
): Kind[] {
  const lost = new Map<string, Arch[]>();
  const voided = rows.map((row): Kind => {
    if (!codes.includes(row.code) || how.isOpen(row)) return row;
    const own = row.arches.filter((arch) => arches.includes(arch) && !row.voided.includes(arch));
    if (own.length === 0) return row;
    lost.set(row.code, [...(lost.get(row.code) ?? []), ...own]);
    const all = [...row.voided, ...own];
    return all.length === row.arches.length ? how.voidAll({ ...row, voided: all }) : { ...row, voided: all };
  });
  const inOrder = (list: readonly Arch[]) => ARCHES.filter((arch) => list.includes(arch));
  const extended = voided.map((row): Kind => {
    const more = lost.get(row.code);
    return more !== undefined && how.isOpen(row) ? { ...row, arches: inOrder([...row.arches, ...more]) } : row;
  });
  const added = [...lost].flatMap(([code, own]): Kind[] => {
    const same = extended.filter((row) => row.code === code);
    const latest = same.reduce<Kind | null>(
      (best, row) => (best === null || row.round > best.round ? row : best),
      null,
    );
    return latest === null || same.some((row) => how.isOpen(row)) ? [] : [how.fresh(latest, inOrder(own))];
  });
  return [...extended, ...added];
}
