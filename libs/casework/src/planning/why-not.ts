import type { RequestOffers, Told, WhyNot } from '@archwright/contracts';
import { smallestRelaxations } from '@archwright/planner';
import { isToCome, type PlanRequest } from '@archwright/protocol';
import { tell, told } from '../tell.js';
import { refusalTold, stageOfRefusal, type Refusal } from './refusal-words.js';
import { relaxationsFor, type Relaxation } from './relaxations.js';
import { WhatIf } from './what-if.js';

/** What else the practice has: taken into account only when a person agrees to it. */
export interface WaysOut {
  /** The request with clinics beyond the accepted ones in its snapshot. */
  readonly everyClinic: PlanRequest;
  /** What the person has agreed to already; proposals come on top of it. */
  readonly relax: NonNullable<RequestOffers['relax']>;
}

/**
 * Why a request has no plan, and the smallest relaxations that give it one, found by searching again: each that does so
 * alone, or when none does, each two that do so together.
 *
 * A longer wait is the shortest that works: one day less has no plan.
 *
 * @param refusal what proves that the request can never have a plan; null when it merely has none now
 */
export function explainWhyNot(request: PlanRequest, refusal: Refusal | null, { everyClinic, relax }: WaysOut): WhyNot {
  const whatIf = new WhatIf(request);
  const failing = failingStage(request, refusal, whatIf);
  const { title } = request.chain.stages.find(({ code }) => code === failing.stage) ?? { title: failing.stage };
  const possible = relaxationsFor(request, everyClinic, relax);
  const helping = smallestRelaxations(
    possible.map(({ most }) => most),
    (steps) => whatIf.delivery(relaxed(request, possible, steps)),
  );
  return {
    failingStage: title,
    ...tell(failing.because),
    relaxations: helping.map(({ steps, answer }) => ({ ...proposed(possible, steps, relax), deliveryOn: answer.on })),
  };
}

function relaxed(request: PlanRequest, possible: readonly Relaxation[], steps: readonly number[]): PlanRequest {
  return possible.reduce((each, { ask }, at) => ((steps[at] ?? 0) === 0 ? each : ask(each, steps[at] ?? 0)), request);
}

function proposed(
  possible: readonly Relaxation[],
  steps: readonly number[],
  relax: WaysOut['relax'],
): Omit<WhyNot['relaxations'][number], 'deliveryOn'> {
  const parts = possible.flatMap((relaxation, at) => {
    const step = steps[at] ?? 0;
    return step === 0 ? [] : [{ relaxation, step }];
  });
  return {
    code: parts.map(({ relaxation }) => relaxation.code).join('-and-'),
    changes: parts.map(({ relaxation, step }) => tell(relaxation.asked(step))),
    apply: parts.reduce<WaysOut['relax'] | null>(
      (agreed, { relaxation, step }) => (agreed === null ? null : (relaxation.agree?.(agreed, step) ?? null)),
      relax,
    ),
  };
}

/** The first stage that cannot be reached however the earlier ones are placed. */
function failingStage(request: PlanRequest, refusal: Refusal | null, whatIf: WhatIf): { stage: string; because: Told } {
  const { chain, progress, horizonWeeks } = request;
  const stages = chain.stages.filter(
    ({ code, chained }) => chained && progress.stages.some((row) => row.code === code && isToCome(row.state)),
  );
  const last = stages.at(-1);
  if (refusal !== null)
    return {
      stage: stageOfRefusal(refusal, chain) ?? last?.code ?? '',
      because: refusalTold(refusal, chain),
    };
  const failing = stages[whatIf.placeableVisits(request)] ?? last;
  return {
    stage: failing?.code ?? '',
    because: told('why-not-no-time', {
      title: failing === undefined ? null : { title: failing.title },
      weeks: horizonWeeks,
    }),
  };
}
