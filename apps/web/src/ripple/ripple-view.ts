import type { Ripple } from '@archwright/contracts';
import { dateAndTime, zoneNote } from '../time/wording.js';
import { changeWords } from '../words/case.js';
import { archWords } from '../words/line.js';

export interface ChangeRow {
  key: string;
  what: string;
  detail: string;
  before: string;
  after: string;
}

const spoken = (at: string | null, zone: string, clock: { today: string; viewer: string }, absent: string): string =>
  at === null
    ? absent
    : [dateAndTime(at, zone, clock.today), zoneNote(at, zone, clock.viewer)].filter(Boolean).join(' ');

/** Visits of a change: where each was, where it goes; other patients' visits are named as such. */
export function visitChanges(ripple: Ripple, clock: { today: string; viewer: string }): ChangeRow[] {
  return ripple.visits.map((change, index) => ({
    key: `${change.appointmentId ?? 'new'} ${String(index)}`,
    what: change.title,
    detail: changeWords.visitOf(change.patientName, change.caseNumber, change.clinicName),
    before: spoken(change.before, change.zone, clock, changeWords.isNew),
    after: spoken(change.after, change.zone, clock, changeWords.isGone),
  }));
}

export function labChanges(ripple: Ripple, zone: string, clock: { today: string; viewer: string }): ChangeRow[] {
  return ripple.labSteps.map((change, index) => ({
    key: `${change.code} ${String(index)}`,
    what: change.title,
    detail: archWords(change.arches),
    before: spoken(change.before, zone, clock, changeWords.isNew),
    after: spoken(change.after, zone, clock, changeWords.isGone),
  }));
}

export const zoneOfRipple = (ripple: Ripple, otherwise: string): string =>
  ripple.plan.visits[0]?.zone ?? ripple.visits[0]?.zone ?? otherwise;
