import type { Interval, LocalRule } from '@archwright/calendar';
import {
  combineArches,
  shippedPaths,
  startProgress,
  type PlanRequest,
  type PracticeSnapshot,
} from '@archwright/protocol';

export const ZONE = 'Europe/Berlin';
/** A Monday morning. */
export const NOW_MS = Date.parse('2027-01-04T06:00:00Z');
const WEEKDAYS = 'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR';

const hours = (from: string, minutes: number): LocalRule => ({
  zone: ZONE,
  startsLocal: `2026-01-01T${from}`,
  minutes,
  rrule: WEEKDAYS,
});

/** A clinic with two chairs, two clinicians and two assistants, open on weekdays from 8 to 17. */
export function aClinic(id: string, busy: readonly Interval[] = []): PracticeSnapshot['clinics'][number] {
  const working = [hours('08:00', 540)];
  const skills = ['complete-dentures', 'oral-surgery', 'implant-surgery'];
  const two = (kind: string) => [1, 2].map((number) => `${id}-${kind}-${String(number)}`);
  return {
    id,
    name: id,
    zone: ZONE,
    opening: working,
    closures: [],
    protected: [],
    chairs: two('chair').map((each) => ({ id: each, label: each, wheelchairRoom: true, busy })),
    clinicians: two('clinician').map((each) => ({ id: each, name: each, skills, working, absences: [], busy: [] })),
    assistants: two('assistant').map((each) => ({ id: each, working, absences: [], busy: [] })),
    kits: ['tracing-set', 'surgical-set'].map((code) => ({
      id: `${id}-${code}`,
      code,
      reprocessingMinutes: 90,
      busy: [],
    })),
  };
}

/** One laboratory with two places at every bench, a courier out in the evening and home in the afternoon. */
export function aPractice(clinics = [aClinic('north')], busyPlaces: readonly Interval[] = []): PracticeSnapshot {
  const centres = [
    ...new Set(
      shippedPaths.flatMap((path) => path.labPhases.flatMap(({ steps }) => steps)).map(({ workCentre }) => workCentre),
    ),
  ];
  return {
    clinics,
    laboratories: [
      {
        id: 'laboratory',
        name: 'Laboratory',
        labDays: { zone: ZONE, cutOffLocal: '12:00', openWeekdays: [1, 2, 3, 4, 5], closedOn: [] },
        sameRoofClinicIds: [],
        workCentres: centres.map((code) => ({
          id: `centre-${code}`,
          code,
          working: [hours('07:30', 540)],
          closures: [],
          places: [1, 2].map((place) => ({ id: `${code}-${String(place)}`, label: String(place), busy: busyPlaces })),
          openBatches: [],
        })),
      },
    ],
    couriers: clinics.map(({ id }) => ({
      id: `courier-${id}`,
      clinicId: id,
      laboratoryId: 'laboratory',
      toLab: hours('17:15', 870),
      toClinic: hours('15:00', 1020),
    })),
  };
}

/** A case at its beginning on one shipped path for both arches, where the path allows both. */
export function aRequest(code: string, change: Partial<PlanRequest> = {}): PlanRequest {
  const path = shippedPaths.find((each) => each.code === code);
  if (path === undefined) throw new Error(`No shipped path is called ${code}.`);
  const chain = combineArches(Object.fromEntries(path.arches.map((arch) => [arch, path])));
  const practice = change.practice ?? aPractice();
  return {
    chain,
    progress: startProgress(chain),
    fixedStages: [],
    fixedSteps: [],
    practice,
    patient: {
      id: 'patient',
      zone: ZONE,
      busy: [],
      otherVisits: [],
      wishes: { weekdays: [], from: null, to: null },
      unavailableOn: [],
      escort: [],
      wheelchairRoom: false,
      travelMinutes: 20,
      chairMinutesPerDay: null,
      homeTravelMinutes: null,
    },
    wishes: { clinicIds: practice.clinics.map(({ id }) => id), clinicianId: null, laboratoryIds: ['laboratory'] },
    nowMs: NOW_MS,
    notBeforeMs: null,
    horizonWeeks: 12,
    rush: false,
    lagOverrides: {},
    ignoreUnavailable: false,
    ...change,
  };
}
