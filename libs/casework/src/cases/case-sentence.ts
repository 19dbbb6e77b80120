import { localDate } from '@archwright/calendar';
import type { CaseState, StageState, Told } from '@archwright/contracts';
import { isToCome } from '@archwright/protocol';
import type { StageVisit } from './case-visits.js';
import { told } from '../tell.js';

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
export function caseSentence(situation: CaseSituation): Told {
  return stopped(situation) ?? urgent(situation) ?? upNext(situation);
}

function stopped({ state, stateReason, reviewOn }: CaseSituation): Told | null {
  const because = stateReason === null ? null : ended(stateReason);
  switch (state) {
    case 'paused':
      return told('case-paused', { because, again: reviewOn === null ? null : { day: reviewOn } });
    case 'transferred':
    case 'abandoned':
      return told(`case-${state}`, { because });
    case 'closed':
    case 'ended-by-death':
      return told(`case-${state}`);
    case 'enquiry':
    case 'open':
      return null;
  }
}

function urgent({ alerts, heldUntil, stages, zone }: CaseSituation): Told | null {
  const [alert] = alerts;
  if (alert !== undefined)
    return told('case-to-decide', { title: { title: alert.stage }, reason: ended(alert.reason) });
  if (heldUntil !== null) return told('case-held', { until: momentAt(heldUntil, zone) });
  const underWay = stages.find(({ state }) => state === 'in-progress');
  return underWay === undefined ? null : told('case-under-way', { title: { title: underWay.title } });
}

function upNext({ state, stages }: CaseSituation): Told {
  const toCome = stages.filter((stage) => isToCome(stage.state) && stage.chained);
  const next = toCome.find(({ visit }) => visit !== null);
  if (next?.visit != null) {
    const { startsAt, zone, clinicName } = next.visit;
    const visit = { title: { title: next.title }, when: momentAt(startsAt, zone) };
    if (next.visit.state === 'missed') return told('case-missed', visit);
    const delivery = next.isDelivery ? null : deliveryVisit(stages);
    return told('case-next', { ...visit, clinic: clinicName, placement: delivery === null ? null : dayOf(delivery) });
  }
  const [first] = toCome;
  if (first === undefined) {
    const placed = deliveryVisit(stages);
    return placed === null ? told('case-nothing-left') : told('case-placed', { on: dayOf(placed) });
  }
  return told(state === 'enquiry' ? 'case-enquiry' : 'case-not-booked', { title: { title: first.title } });
}

const momentAt = (at: Date, zone: string) => ({ moment: at.toISOString(), zone });
const dayOf = ({ startsAt, zone }: StageVisit) => ({ day: localDate(startsAt.getTime(), zone) });

/** Where the last denture of the case is placed; null while that is not booked. */
export function deliveryVisit(stages: CaseSituation['stages']): StageVisit | null {
  const counted = stages.filter(({ isDelivery, state }) => isDelivery && state !== 'repeated' && state !== 'dropped');
  const visit = counted.at(-1)?.visit ?? null;
  return visit?.state === 'missed' ? null : visit;
}

const ended = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);
