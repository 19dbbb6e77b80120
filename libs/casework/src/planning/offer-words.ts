import { dayNumber } from '@archwright/calendar';
import type { OfferReason } from '@archwright/planner';
import type { FoundPlan } from './search.js';

const LABELS: Readonly<Record<OfferReason['code'], string>> = {
  'earliest-delivery': 'Earliest placement',
  'every-visit-as-wished': 'Every visit as wished',
  'fewest-wishes-broken': 'Closest to the wishes',
  'same-clinician': 'Same clinician throughout',
  'fewest-clinician-changes': 'Fewest changes of clinician',
  'one-clinic': 'One clinic throughout',
  'fewest-clinic-changes': 'Fewest changes of clinic',
  'smallest-buffer-slots': 'Most room before each visit',
  'another-choice': 'Another choice',
};

/** One label per offer: the first reason that no earlier offer is called by. */
export function labelsOf(offers: readonly FoundPlan[]): string[] {
  const taken = new Set<string>();
  return offers.map(({ reasons }, index) => {
    const own = reasons.map(({ code }) => LABELS[code]).find((label) => !taken.has(label));
    const label = own ?? `${LABELS['another-choice']} ${String(index + 1)}`;
    taken.add(label);
    return label;
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
    const later = `Placement ${String(days)} ${days === 1 ? 'day' : 'days'} later than the earliest offer.`;
    return { ...offer, plan: { ...plan, givesUp: [later, ...plan.givesUp] } };
  });
}
