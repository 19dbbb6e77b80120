import { dayNumber } from '@archwright/calendar';
import type { Told, ToldCode } from '@archwright/contracts';
import type { OfferReason } from '@archwright/planner';
import type { CasePlan, PlanLoss } from '@archwright/protocol';
import { told } from '../tell.js';
import type { FoundPlan } from './search.js';

const SLOT_MINUTES = 5;

const LABELS: Readonly<Record<OfferReason['code'], ToldCode>> = {
  'earliest-delivery': 'label-earliest',
  'every-visit-as-wished': 'label-as-wished',
  'fewest-wishes-broken': 'label-near-wishes',
  'same-clinician': 'label-same-clinician',
  'fewest-clinician-changes': 'label-few-clinicians',
  'one-clinic': 'label-one-clinic',
  'fewest-clinic-changes': 'label-few-clinics',
  'smallest-buffer-slots': 'label-most-room',
  'another-choice': 'label-another',
};

/** One label per offer: the first reason that no earlier offer is called by. */
export function labelsOf(offers: readonly FoundPlan[]): Told[] {
  const taken = new Set<ToldCode>();
  return offers.map(({ plan }, index) => {
    const own = plan.reasons.map(({ code }) => LABELS[code]).find((label) => !taken.has(label));
    if (own === undefined) return told('label-another-numbered', { n: index + 1 });
    taken.add(own);
    return told(own);
  });
}

/** Each offer with what it gives up against the earliest of them. */
export function withLaterDelivery(offers: readonly FoundPlan[]): FoundPlan[] {
  const dates = offers.flatMap(({ plan }) => plan.deliveryOn ?? []);
  const earliest = [...dates].sort()[0];
  return offers.map((offer) => {
    const { plan } = offer;
    if (earliest === undefined || plan.deliveryOn === null || plan.deliveryOn === earliest) return offer;
    const days = dayNumber(plan.deliveryOn) - dayNumber(earliest);
    return { ...offer, plan: { ...plan, givesUp: [{ kind: 'later-delivery', days }, ...plan.givesUp] } };
  });
}

/** Why a plan is offered. */
export function reasonTold({ code, value }: OfferReason, { deliveryOn }: Pick<CasePlan, 'deliveryOn'>): Told {
  switch (code) {
    case 'earliest-delivery':
      return deliveryOn === null ? told('offer-earliest-visit') : told('offer-earliest', { on: { day: deliveryOn } });
    case 'every-visit-as-wished':
      return told('offer-as-wished');
    case 'fewest-wishes-broken':
      return told('offer-near-wishes', { visits: value });
    case 'same-clinician':
      return told('offer-same-clinician');
    case 'fewest-clinician-changes':
      return told('offer-few-clinicians', { n: value });
    case 'one-clinic':
      return told('offer-one-clinic');
    case 'fewest-clinic-changes':
      return told('offer-few-clinics', { n: value });
    case 'smallest-buffer-slots':
      return told('offer-most-room', { minutes: value * SLOT_MINUTES });
    case 'another-choice':
      return told('offer-another');
  }
}

/** What a plan gives up. */
export function lossTold(loss: PlanLoss): Told {
  switch (loss.kind) {
    case 'outside-wishes': {
      const { startsMs, zone } = loss;
      const starts = startsMs.map((ms) => told('moment', { at: { moment: new Date(ms).toISOString(), zone } }));
      return told('offer-outside-wishes', { visits: startsMs.length, starts: { list: starts } });
    }
    case 'clinician-changes':
      return told('offer-changes-clinician', { n: loss.count });
    case 'clinic-changes':
      return told('offer-changes-clinic', { n: loss.count });
    case 'too-long': {
      const { title, minutes, mostMinutes } = loss;
      return told('offer-too-long', { title: { title }, minutes, most: mostMinutes });
    }
    case 'later-delivery':
      return told('offer-later', { days: loss.days });
  }
}
