import type { RequestOffers, Told } from '@archwright/contracts';
import { isToCome, stepIsToCome, type PlanRequest } from '@archwright/protocol';
import { told } from '../tell.js';
import { longestWaits, withLongerWaits, type LongestWait } from './relaxed-lags.js';

/** No wait is proposed to become longer than this: beyond it the material or the patient decides, not the calendar. Project default. */
const MOST_EXTRA_DAYS = 120;

type Relax = NonNullable<RequestOffers['relax']>;

/** Something that a person could agree to, by whole steps: days of a wait, or 1 for what is agreed to or not. */
export interface Relaxation {
  readonly code: string;
  /** 0 when there is nothing to agree to. */
  readonly most: number;
  readonly asked: (step: number) => Told;
  /** What is sent with the next request for offers, on top of what is agreed already; null: not for the desk to agree to. */
  readonly agree: ((agreed: Relax, step: number) => Relax) | null;
  readonly ask: (request: PlanRequest, step: number) => PlanRequest;
}

/** Everything that could be agreed to for a request, the least intrusive first. */
export function relaxationsFor(request: PlanRequest, everyClinic: PlanRequest, relax: Relax): Relaxation[] {
  const isAhead = ({ towards }: LongestWait): boolean =>
    request.progress.stages.some((row) => row.code === towards && isToCome(row.state));
  return [
    ...longestWaits(request.chain)
      .filter(isAhead)
      .map((wait) => longerWait(wait, relax)),
    otherClinician(request),
    otherClinic(request, everyClinic),
    impossibleDays(request),
    ...oneMorePlace(request),
  ];
}

function longerWait({ code, title }: LongestWait, { extraWaitDays }: Relax): Relaxation {
  // The request holds the waits as they are agreed already: a step comes on top of them.
  const before = extraWaitDays?.[code] ?? 0;
  return {
    code: 'longer-wait',
    most: Math.max(0, MOST_EXTRA_DAYS - before),
    asked: (days) => told('relax-wait', { days, title: { title } }),
    agree: (agreed, days) => ({ ...agreed, extraWaitDays: { ...agreed.extraWaitDays, [code]: before + days } }),
    ask: (request, days) => ({
      ...request,
      lagOverrides: withLongerWaits(request.chain, request.lagOverrides, { [code]: before + days }),
    }),
  };
}

function otherClinician({ wishes }: PlanRequest): Relaxation {
  return {
    code: 'other-clinician',
    most: wishes.clinicianId === null ? 0 : 1,
    asked: () => told('relax-clinician'),
    agree: (agreed) => ({ ...agreed, anyClinician: true }),
    ask: (request) => ({ ...request, wishes: { ...request.wishes, clinicianId: null } }),
  };
}

function otherClinic({ wishes }: PlanRequest, { practice }: PlanRequest): Relaxation {
  const clinicIds = practice.clinics.map(({ id }) => id);
  return {
    code: 'other-clinic',
    most: clinicIds.every((id) => wishes.clinicIds.includes(id)) ? 0 : 1,
    asked: () => told('relax-clinic'),
    agree: (agreed) => ({ ...agreed, anyClinic: true }),
    ask: (request) => ({ ...request, practice, wishes: { ...request.wishes, clinicIds } }),
  };
}

function impossibleDays({ ignoreUnavailable, patient }: PlanRequest): Relaxation {
  return {
    code: 'unavailable-days',
    most: ignoreUnavailable || patient.unavailableOn.length + patient.escort.length === 0 ? 0 : 1,
    asked: () => told(patient.escort.length === 0 ? 'relax-days' : 'relax-brought'),
    agree: (agreed) => ({ ...agreed, ignoreUnavailable: true }),
    ask: (request) => ({ ...request, ignoreUnavailable: true }),
  };
}

/** One place more at each bench that the work to come needs; the laboratory would have to staff it. */
function oneMorePlace({ chain, progress, practice, wishes }: PlanRequest): Relaxation[] {
  const steps = chain.steps.filter(
    ({ code, segments }) =>
      segments.some(({ holdsPlace }) => holdsPlace) &&
      progress.steps.some((row) => row.code === code && stepIsToCome(row.state)),
  );
  const needed = new Set(steps.map(({ workCentre }) => workCentre));
  return practice.laboratories
    .filter(({ id }) => wishes.laboratoryIds.includes(id))
    .flatMap((laboratory) =>
      laboratory.workCentres
        .filter(({ code }) => needed.has(code))
        .map(({ id, code }): Relaxation => ({
          code: 'one-place-more',
          most: 1,
          asked: () => told('relax-place', { bench: code.replaceAll('-', ' '), laboratory: laboratory.name }),
          agree: null,
          ask: (request) => ({ ...request, practice: withOnePlaceMore(request.practice, id) }),
        })),
    );
}

function withOnePlaceMore(practice: PlanRequest['practice'], centreId: string): PlanRequest['practice'] {
  const place = { id: `${centreId} one more`, label: '', busy: [] };
  return {
    ...practice,
    laboratories: practice.laboratories.map((laboratory) => ({
      ...laboratory,
      workCentres: laboratory.workCentres.map((centre) =>
        centre.id === centreId ? { ...centre, places: [...centre.places, place] } : centre,
      ),
    })),
  };
}
