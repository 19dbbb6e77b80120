import { loopForTrigger, LOOP_TRIGGERS, type LoopTrigger } from '@archwright/measures';
import {
  applyLoop,
  LoopNotApplicableError,
  positionOf,
  type CaseChain,
  type CaseProgress,
  type LoopOutcome,
} from '@archwright/protocol';

type Arch = 'upper' | 'lower';
type Loop = CaseChain['loops'][number];

/** What sends a case back, and what it costs. */
export interface Remake {
  /** The path's loop, or the word of the person who found it. */
  readonly trigger: string;
  /** Stage or lab step from which everything is made again. */
  readonly returnTo: string;
  readonly arches: readonly Arch[];
  readonly discards: LoopOutcome['discards'];
  /** Rounds of healing stand before the impression is made again. */
  readonly heals: boolean;
  /** False: nothing is planned until a person has settled whose work it is. */
  readonly mayPlan: boolean;
  /** The case once it is sent back. */
  readonly progress: CaseProgress;
}

export interface Found {
  readonly trigger: string;
  /** Stage at which it was found. */
  readonly at: string;
  readonly arches: readonly Arch[];
}

/** A finding that no loop of the path names: the visit is made again with what was made at it. Project default. */
const OWN_FINDING = 'clinical-finding';

/**
 * What a finding does to a case. A trigger that the path has no loop for makes the visit again at which it was found.
 * Tries within the visit count as used up: whoever raises it has given up on them.
 */
export function remakeOf(chain: CaseChain, progress: CaseProgress, found: Found): Remake {
  const loops = loopsMeant(chain, found);
  const own = { ...chain, loops: [...chain.loops, ownFinding(chain, found.at)] };
  try {
    return combined(own, progress, found, loops.length > 0 ? loops.map(({ code }) => code) : [OWN_FINDING]);
  } catch (error) {
    if (!(error instanceof LoopNotApplicableError)) throw error;
    return combined(own, progress, found, [OWN_FINDING]);
  }
}

/** With different paths each arch has a loop of its own by that name; both apply when both arches are concerned. */
function combined(chain: CaseChain, progress: CaseProgress, found: Found, loops: readonly string[]): Remake {
  let now = progress;
  const outcomes = loops.map((loop) => {
    const finding = { loop, foundAt: found.at, arches: found.arches, triesMade: Number.MAX_SAFE_INTEGER };
    const outcome = applyLoop(chain, now, finding);
    now = outcome.progress;
    return outcome;
  });
  // Healing itself voids nothing: what is made again is the visit at which the mucosa was found.
  const heals = outcomes.some(({ remedy }) => remedy === 'healing');
  if (heals)
    now = applyLoop(chain, now, { loop: OWN_FINDING, foundAt: found.at, arches: found.arches, triesMade: 0 }).progress;
  const targets = outcomes.map((outcome) => targetOf(chain, outcome, found.at));
  return {
    trigger: loops.includes(OWN_FINDING) ? found.trigger : baseCode(chain, outcomes[0]?.loop ?? found.trigger),
    returnTo: targets.sort((a, b) => positionOf(chain, a) - positionOf(chain, b))[0] ?? found.at,
    arches: (['upper', 'lower'] as const).filter((arch) => outcomes.some(({ arches }) => arches.includes(arch))),
    discards: outcomes.flatMap(({ discards }) => discards),
    heals,
    mayPlan: outcomes.every(({ remedy }) => remedy !== 'quarantine'),
    progress: now,
  };
}

function targetOf(chain: CaseChain, outcome: LoopOutcome, foundAt: string): string {
  const remedy = chain.loops.find(({ code }) => code === outcome.loop)?.remedy;
  return remedy?.kind === 'return' ? remedy.to : foundAt;
}

function loopsMeant(chain: CaseChain, { trigger, at, arches }: Found): Loop[] {
  const here = chain.loops.filter(
    (loop) => loop.foundAt.includes(at) && loop.arches.some((arch) => arches.includes(arch)),
  );
  const codes = here.map(({ code }) => baseCode(chain, code));
  const wanted = codes.includes(trigger) ? trigger : isTrigger(trigger) ? loopForTrigger(trigger, codes) : null;
  return here.filter(({ code }) => code === trigger || baseCode(chain, code) === wanted);
}

const isTrigger = (trigger: string): trigger is LoopTrigger => LOOP_TRIGGERS.some((each) => each === trigger);

/** The loop's code in its own path: arches on different paths carry theirs at the end. */
function baseCode(chain: CaseChain, code: string): string {
  const differ = new Set(chain.paths.map((path) => `${path.code} ${String(path.version)}`)).size > 1;
  return differ ? code.replace(/-(upper|lower)$/, '') : code;
}

function ownFinding(chain: CaseChain, at: string): Loop {
  return {
    code: OWN_FINDING,
    trigger: 'Found by a person',
    arches: chain.paths.map(({ arch }) => arch),
    foundAt: [at],
    remedy: { kind: 'return', to: at },
    otherwise: null,
    discards: chain.objects.filter(({ madeAt }) => madeAt === at).map(({ code }) => code),
    extra: {
      visitsMin: 1,
      visitsMax: 1,
      labWorkingDaysMin: 0,
      labWorkingDaysMax: 0,
      standing: 'project-default',
      source: 'the visit is made again',
    },
  };
}
