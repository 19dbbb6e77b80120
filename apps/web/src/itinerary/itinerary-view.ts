import type { CaseView, ItineraryView } from '@archwright/contracts';
import { longDate, timeOfDay, zoneNote } from '../time/wording.js';
import { localDateOf } from '../time/zone.js';
import { enumerated } from '../words/plural.js';

export interface ItineraryRow {
  key: string;
  day: string;
  time: string;
  zoneNote: string | null;
  /** What the visit is for; empty when the case does not say. */
  title: string;
  clinician: string;
  clinic: string;
  address: string;
  phone: string;
  isProvisional: boolean;
}

/** The visits to come as they are handed over, with what each is for and who treats. */
export function itineraryRows(
  { visits }: ItineraryView,
  { stages }: Pick<CaseView, 'stages'>,
  { today, viewer }: { today: string; viewer: string },
): ItineraryRow[] {
  return visits.map((visit) => {
    const own = stages.filter(({ appointmentId }) => appointmentId === visit.appointmentId);
    return {
      key: visit.appointmentId,
      day: longDate(localDateOf(Date.parse(visit.startsAt), visit.zone), today),
      time: timeOfDay(visit.startsAt, visit.zone),
      zoneNote: zoneNote(visit.startsAt, visit.zone, viewer),
      title: enumerated(own.map(({ title }) => title)),
      clinician: own[0]?.clinicianName ?? '',
      clinic: visit.clinicName,
      address: visit.address,
      phone: visit.clinicPhone,
      isProvisional: visit.isProvisional,
    };
  });
}
