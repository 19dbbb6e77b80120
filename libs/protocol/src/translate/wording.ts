import { toLocal } from '@archwright/calendar';
import type { ChainVector, OfferReason } from '@archwright/planner';
import type { PatientSnapshot } from '../snapshot.js';
import type { CasePlanVisit } from './plan.js';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** A date as people say it, such as `13 Apr 2026`. */
function spoken(date: string): string {
  const [year = '', month = '', day = ''] = date.split('-');
  return `${String(Number(day))} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;

/** A wall-clock time of the next weeks, such as `Mon 13 Apr 09:20`. */
function spokenTime(local: string): string {
  const date = local.slice(0, 10);
  const weekday = WEEKDAYS[new Date(`${date}T00:00:00Z`).getUTCDay()] ?? '';
  return `${weekday} ${spoken(date).slice(0, -5)} ${local.slice(11)}`;
}

const times = (count: number, one: string, many: string): string =>
  count === 1 ? `one ${one}` : `${String(count)} ${many}`;
/** The same at the beginning of a sentence. */
const timesFirst = (count: number, one: string, many: string): string =>
  count === 1 ? `One ${one}` : `${String(count)} ${many}`;

/** Why a plan is offered, one sentence each. */
export function reasonSentences(reasons: readonly OfferReason[], deliveryOn: string | null): string[] {
  return reasons.map(({ code, value }) => {
    switch (code) {
      case 'earliest-delivery':
        return deliveryOn === null ? 'Earliest next visit.' : `Earliest placement: ${spoken(deliveryOn)}.`;
      case 'every-visit-as-wished':
        return 'Every visit at the times wished for.';
      case 'fewest-wishes-broken':
        return `As close to the wishes as possible: ${times(value, 'visit', 'visits')} outside them.`;
      case 'same-clinician':
        return 'The same clinician throughout.';
      case 'fewest-clinician-changes':
        return `As few changes of clinician as possible: ${String(value)}.`;
      case 'one-clinic':
        return 'One clinic throughout.';
      case 'fewest-clinic-changes':
        return `As few changes of clinic as possible: ${String(value)}.`;
      case 'smallest-buffer-slots':
        return `The work is back ${String(value * 5)} minutes or more before each visit that needs it.`;
      case 'another-choice':
        return 'Another choice: differs from the other offers in at least two visits.';
    }
  });
}

/** What a plan gives up, one sentence each. */
export function givenUp(visits: readonly CasePlanVisit[], vector: ChainVector, patient: PatientSnapshot): string[] {
  const changes: string[] = [];
  if (vector.clinicianChanges > 0)
    changes.push(`${timesFirst(vector.clinicianChanges, 'change', 'changes')} of clinician.`);
  if (vector.clinicChanges > 0) changes.push(`${timesFirst(vector.clinicChanges, 'change', 'changes')} of clinic.`);
  const cap = patient.chairMinutesPerDay;
  const tooLong = visits.flatMap((each) => {
    const minutes = (each.endMs - each.startMs) / 60_000;
    return cap !== null && minutes > cap
      ? [`${each.title} takes ${String(minutes)} minutes, more than the ${String(cap)} a day the patient can sit.`]
      : [];
  });
  return [...outsideWishes(visits, patient), ...changes, ...tooLong];
}

function outsideWishes(visits: readonly CasePlanVisit[], patient: PatientSnapshot): string[] {
  const broken = visits.filter((each) => !each.asWished);
  if (broken.length === 0) return [];
  const starts = broken.map((each) => spokenTime(toLocal(each.startMs, patient.zone)));
  const are = broken.length === 1 ? 'visit is' : 'visits are';
  return [`${timesFirst(broken.length, are, are)} outside the wishes: ${starts.join(', ')}.`];
}
