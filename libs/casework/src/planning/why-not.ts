import type { RequestOffers, WhyNot } from '@archwright/contracts';
import { isToCome, type PlanRequest } from '@archwright/protocol';
import { refusalInWords, stageOfRefusal, type Refusal } from './refusal-words.js';
import { longestWaits, withLongerWaits, type LongestWait } from './relaxed-lags.js';
import { WhatIf, type Delivery } from './what-if.js';

/** No wait is proposed to become longer than this: beyond it the material or the patient decides, not the calendar. Project default. */
const MOST_EXTRA_DAYS = 120;

type Relax = NonNullable<RequestOffers['relax']>;
type Relaxation = WhyNot['relaxations'][number];

/** What else the practice has: taken into account only when a person agrees to it. */
export interface WaysOut {
  /** The request with clinics beyond the accepted ones in its snapshot. */
  readonly everyClinic: PlanRequest;
  /** What the person has agreed to already; proposals come on top of it. */
  readonly relax: Relax;
}

/**
 * Why a request has no plan, and each single relaxation that gives it one, found by searching again.
 *
 * A longer wait is the shortest that works: one day less has no plan.
 *
 * @param refusal what proves that the request can never have a plan; null when it merely has none now
 */
export function explainWhyNot(request: PlanRequest, refusal: Refusal | null, { everyClinic, relax }: WaysOut): WhyNot {
  const whatIf = new WhatIf(request);
  const failing = failingStage(request, refusal, whatIf);
  const titles = new Map(request.chain.stages.map(({ code, title }) => [code, title]));
  const relaxations: Relaxation[] = [];
  for (const wait of longestWaits(request.chain)) {
    if (wait.towards === failing.stage) relaxations.push(...longerWait(request, wait, relax, whatIf));
  }
  for (const { asked, ...proposal } of [
    ...otherClinician(request, relax),
    ...otherClinic(request, everyClinic, relax),
    ...impossibleDays(request, relax),
  ]) {
    const delivery = whatIf.delivery(asked);
    if (delivery !== null) relaxations.push({ ...proposal, deliveryOn: delivery.on });
  }
  return { failingStage: titles.get(failing.stage) ?? failing.stage, sentence: failing.sentence, relaxations };
}

/** The first stage that cannot be reached however the earlier ones are placed. */
function failingStage(
  request: PlanRequest,
  refusal: Refusal | null,
  whatIf: WhatIf,
): { stage: string; sentence: string } {
  const { chain, progress, horizonWeeks } = request;
  const stages = chain.stages.filter(
    ({ code, chained }) => chained && progress.stages.some((row) => row.code === code && isToCome(row.state)),
  );
  const last = stages.at(-1);
  if (refusal !== null)
    return {
      stage: stageOfRefusal(refusal, chain) ?? last?.code ?? '',
      sentence: refusalInWords(refusal, chain),
    };
  const failing = stages[whatIf.placeableVisits(request)] ?? last;
  return {
    stage: failing?.code ?? '',
    sentence:
      `"${failing?.title ?? 'The next visit'}" has no time left within the waits that the treatment allows, ` +
      `in the next ${String(horizonWeeks)} weeks and with what is booked.`,
  };
}

function longerWait(request: PlanRequest, wait: LongestWait, relax: Relax, whatIf: WhatIf): Relaxation[] {
  const before = relax.extraWaitDays?.[wait.code] ?? 0;
  // The request holds the waits as they are agreed already: what is asked comes on top of them.
  const by = (days: number): Delivery | null =>
    whatIf.delivery({
      ...request,
      lagOverrides: withLongerWaits(request.chain, request.lagOverrides, { [wait.code]: before + days }),
    });
  let works = MOST_EXTRA_DAYS - before;
  let delivery = works < 1 ? null : by(works);
  if (delivery === null) return [];
  // Longer waits only ever add plans, so halving finds the shortest that works.
  let fails = 0;
  while (works - fails > 1) {
    const days = Math.floor((works + fails) / 2);
    const found = by(days);
    if (found === null) fails = days;
    else [works, delivery] = [days, found];
  }
  return [
    {
      code: 'longer-wait',
      sentence: `Allow ${String(works)} ${works === 1 ? 'day' : 'days'} more for the wait "${wait.title}".`,
      apply: { ...relax, extraWaitDays: { ...relax.extraWaitDays, [wait.code]: before + works } },
      deliveryOn: delivery.on,
    },
  ];
}

/** A relaxation with the request that it would make. */
type Proposal = Omit<Relaxation, 'deliveryOn'> & { readonly asked: PlanRequest };

function otherClinician(request: PlanRequest, relax: Relax): Proposal[] {
  if (request.wishes.clinicianId === null) return [];
  return [
    {
      asked: { ...request, wishes: { ...request.wishes, clinicianId: null } },
      code: 'other-clinician',
      sentence: 'Accept another clinician with the same skills.',
      apply: { ...relax, anyClinician: true },
    },
  ];
}

function otherClinic(request: PlanRequest, everyClinic: PlanRequest, relax: Relax): Proposal[] {
  const clinicIds = everyClinic.practice.clinics.map(({ id }) => id);
  if (clinicIds.every((id) => request.wishes.clinicIds.includes(id))) return [];
  return [
    {
      asked: { ...everyClinic, wishes: { ...request.wishes, clinicIds } },
      code: 'other-clinic',
      sentence: 'Accept another clinic of the practice.',
      apply: { ...relax, anyClinic: true },
    },
  ];
}

function impossibleDays(request: PlanRequest, relax: Relax): Proposal[] {
  if (request.ignoreUnavailable || request.patient.unavailableOn.length === 0) return [];
  return [
    {
      asked: { ...request, ignoreUnavailable: true },
      code: 'unavailable-days',
      sentence: 'Come on days that were given as impossible.',
      apply: { ...relax, ignoreUnavailable: true },
    },
  ];
}
