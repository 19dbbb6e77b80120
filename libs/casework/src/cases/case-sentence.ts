import type { CaseState, StageState } from '@archwright/contracts';
import { isToCome } from '@archwright/protocol';
import type { StageVisit } from './case-visits.js';
import { dateInWords, dayInWords, momentInWords } from './dates-in-words.js';

/** What the sentence on top of a case is made from. */
export interface CaseSituation {
  readonly state: CaseState;
  readonly stateReason: string | null;
  readonly reviewOn: string | null;
  readonly zone: string;
  /** In the order of the path. */
  readonly stages: readonly {
    readonly title: string;
    readonly state: StageState;
    readonly isDelivery: boolean;
    /** False for reviews that are due but not booked with the plan. */
    readonly chained: boolean;
    readonly visit: StageVisit | null;
  }[];
  /** Alerts that nobody has decided yet. */
  readonly alerts: readonly { readonly stage: string; readonly reason: string }[];
  readonly heldUntil: Date | null;
}

/** The one thing to know about a case: what stops it, else what comes next. */
export function caseSentence(situation: CaseSituation): string {
  return stopped(situation) ?? urgent(situation) ?? upNext(situation);
}

function stopped({ state, stateReason, reviewOn }: CaseSituation): string | null {
  const because = stateReason === null ? '.' : `: ${ended(stateReason)}`;
  switch (state) {
    case 'paused':
      return `Paused${because}${reviewOn === null ? '' : ` To be looked at again on ${dateInWords(reviewOn)}.`}`;
    case 'transferred':
      return `Handed over${because}`;
    case 'abandoned':
      return `Given up${because}`;
    case 'closed':
      return 'Closed. Recalls stay due.';
    case 'ended-by-death':
      return 'The patient has died. Everything was stopped.';
    case 'enquiry':
    case 'open':
      return null;
  }
}

function urgent({ alerts, heldUntil, stages, zone }: CaseSituation): string | null {
  const [alert] = alerts;
  if (alert !== undefined) return `To be decided at "${alert.stage}": ${ended(alert.reason)}`;
  if (heldUntil !== null)
    return `Times are held until ${momentInWords(heldUntil, zone)}: confirm them or give them back.`;
  const underWay = stages.find(({ state }) => state === 'in-progress');
  return underWay === undefined ? null : `Under way: ${underWay.title}.`;
}

function upNext({ state, stages }: CaseSituation): string {
  const toCome = stages.filter((stage) => isToCome(stage.state) && stage.chained);
  const next = toCome.find(({ visit }) => visit !== null);
  if (next?.visit?.state === 'missed')
    return `Missed: ${next.title}, ${momentInWords(next.visit.startsAt, next.visit.zone)}. It needs a new time.`;
  if (next?.visit != null) {
    const { startsAt, zone, clinicName } = next.visit;
    const delivery = next.isDelivery ? null : deliveryVisit(stages);
    const placement = delivery === null ? '' : ` Placement on ${dayInWords(delivery.startsAt, delivery.zone)}.`;
    return `Next: ${next.title}, ${momentInWords(startsAt, zone)}, ${clinicName}.${placement}`;
  }
  const [first] = toCome;
  if (first === undefined) {
    const placed = deliveryVisit(stages);
    const since =
      placed === null ? 'Nothing is left to book.' : `Placed on ${dayInWords(placed.startsAt, placed.zone)}.`;
    return `${since} Later reviews and recalls are due, not booked.`;
  }
  return state === 'enquiry'
    ? `Enquiry: nothing is booked yet. Ask for offers for ${quoted(first.title)}.`
    : `Not booked: ${quoted(first.title)} and what follows. Ask for offers.`;
}

/** Where the last denture of the case is placed; null while that is not booked. */
export function deliveryVisit(stages: CaseSituation['stages']): StageVisit | null {
  const counted = stages.filter(({ isDelivery, state }) => isDelivery && state !== 'repeated' && state !== 'dropped');
  const visit = counted.at(-1)?.visit ?? null;
  return visit?.state === 'missed' ? null : visit;
}

const ended = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);
const quoted = (text: string): string => `"${text}"`;
