import type { RequestOffers, WhyNot } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { isToCome, type PlanRequest } from '@archwright/protocol';
import { refusalInWords, stageOfRefusal } from './refusal-words.js';
import { longestWaits, withLongerWaits, type LongestWait } from './relaxed-lags.js';
import { findOffers, placeableVisits } from './search.js';

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
 */
export function explainWhyNot(request: PlanRequest, { everyClinic, relax }: WaysOut): WhyNot {
  const failing = failingStage(request);
  const titles = new Map(request.chain.stages.map(({ code, title }) => [code, title]));
  const relaxations = [
    ...longestWaits(request.chain)
      .filter(({ towards }) => towards === failing.stage)
      .flatMap((wait) => longerWait(request, wait, relax)),
    ...otherClinician(request, relax),
    ...otherClinic(request, everyClinic, relax),
    ...impossibleDays(request, relax),
  ];
  return { failingStage: titles.get(failing.stage) ?? failing.stage, sentence: failing.sentence, relaxations };
}

/** The first stage that cannot be reached however the earlier ones are placed. */
function failingStage(request: PlanRequest): { stage: string; sentence: string } {
  const { chain, progress, horizonWeeks } = request;
  const stages = chain.stages.filter(
    ({ code, chained }) => chained && progress.stages.some((row) => row.code === code && isToCome(row.state)),
  );
  try {
    const failing = stages[placeableVisits(request)] ?? stages.at(-1);
    return {
      stage: failing?.code ?? '',
      sentence:
        `"${failing?.title ?? 'The next visit'}" has no time left within the waits that the treatment allows, ` +
        `in the next ${String(horizonWeeks)} weeks and with what is booked.`,
    };
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    const stage = stageOfRefusal(error, chain) ?? stages.at(-1)?.code ?? '';
    return { stage, sentence: refusalInWords(error, chain) };
  }
}

/** Delivery of the first plan; undefined when there is none. */
function deliveryOf(request: PlanRequest): string | null | undefined {
  try {
    return findOffers(request, 1)[0]?.plan.deliveryOn;
  } catch (error) {
    // A request that can never have a plan has none either.
    if (error instanceof DomainError) return undefined;
    throw error;
  }
}

function longerWait(request: PlanRequest, wait: LongestWait, relax: Relax): Relaxation[] {
  const before = relax.extraWaitDays?.[wait.code] ?? 0;
  const by = (days: number) =>
    deliveryOf({
      ...request,
      lagOverrides: withLongerWaits(request.chain, request.lagOverrides, { [wait.code]: before + days }),
    });
  let works = MOST_EXTRA_DAYS - before;
  if (works < 1) return [];
  let deliveryOn = by(works);
  if (deliveryOn === undefined) return [];
  // Longer waits only ever add plans, so halving finds the shortest that works.
  let fails = 0;
  while (works - fails > 1) {
    const days = Math.floor((works + fails) / 2);
    const found = by(days);
    if (found === undefined) fails = days;
    else [works, deliveryOn] = [days, found];
  }
  const unit = works === 1 ? 'day' : 'days';
  return [
    {
      code: 'longer-wait',
      sentence: `Allow ${String(works)} ${unit} more for the wait "${wait.title}".`,
      apply: { ...relax, extraWaitDays: { ...relax.extraWaitDays, [wait.code]: before + works } },
      deliveryOn,
    },
  ];
}

function otherClinician(request: PlanRequest, relax: Relax): Relaxation[] {
  if (request.wishes.clinicianId === null) return [];
  return proposed(
    { ...request, wishes: { ...request.wishes, clinicianId: null } },
    {
      code: 'other-clinician',
      sentence: 'Accept another clinician with the same skills.',
      apply: { ...relax, anyClinician: true },
    },
  );
}

function otherClinic(request: PlanRequest, everyClinic: PlanRequest, relax: Relax): Relaxation[] {
  const clinicIds = everyClinic.practice.clinics.map(({ id }) => id);
  if (clinicIds.every((id) => request.wishes.clinicIds.includes(id))) return [];
  return proposed(
    { ...everyClinic, wishes: { ...request.wishes, clinicIds } },
    {
      code: 'other-clinic',
      sentence: 'Accept another clinic of the practice.',
      apply: { ...relax, anyClinic: true },
    },
  );
}

function impossibleDays(request: PlanRequest, relax: Relax): Relaxation[] {
  if (request.ignoreUnavailable || request.patient.unavailableOn.length === 0) return [];
  return proposed(
    { ...request, ignoreUnavailable: true },
    {
      code: 'unavailable-days',
      sentence: 'Come on days that were given as impossible.',
      apply: { ...relax, ignoreUnavailable: true },
    },
  );
}

function proposed(request: PlanRequest, relaxation: Omit<Relaxation, 'deliveryOn'>): Relaxation[] {
  const deliveryOn = deliveryOf(request);
  return deliveryOn === undefined ? [] : [{ ...relaxation, deliveryOn }];
}
