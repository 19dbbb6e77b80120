import type { AppointmentView } from '@archwright/contracts';
import { deskWords } from '../words/desk.js';

/** By what the day is looked at. */
export const GROUPINGS = ['clinic', 'chair', 'clinician'] as const;
export type Grouping = (typeof GROUPINGS)[number];

/** What was asked for in the address; by clinic when it is nothing of the kind. */
export const groupingOf = (text: string | undefined): Grouping => GROUPINGS.find((each) => each === text) ?? 'clinic';

interface Group {
  readonly key: string;
  readonly title: string;
}

/** The part of the day that a visit belongs to. At home nobody sits in a chair of the clinic. */
export function groupOf(visit: AppointmentView, by: Grouping): Group {
  if (by === 'clinician') return { key: visit.clinicianId, title: visit.clinicianName };
  if (by === 'clinic') return { key: visit.clinicId, title: visit.clinicName };
  const place = visit.place === 'clinic' ? visit.chairLabel : deskWords.place[visit.place];
  return {
    key: visit.chairId ?? `${visit.clinicId} ${visit.place}`,
    title: deskWords.placeAt(visit.clinicName, place),
  };
}
