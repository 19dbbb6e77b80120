import type { Interval, LocalRule } from '@archwright/calendar';
import { seededRandom, type SeededRandom } from '@archwright/kernel';
import {
  combineArches,
  shippedPaths,
  startProgress,
  type PatientSnapshot,
  type PlanRequest,
  type PracticeSnapshot,
} from '@archwright/protocol';

const ZONE = 'Europe/Berlin';
/** A Monday in winter, before anybody has opened. */
const NOW_MS = Date.parse('2027-01-04T06:00:00Z');
const WEEKS = 12;
const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;
/** When couriers leave for the laboratory; clinics of one round have one timetable. */
const ROUNDS = ['11:30', '13:00', '15:30', '16:45', '17:15'];

const hours = (from: string, minutes: number): LocalRule => ({
  zone: ZONE,
  startsLocal: `2026-01-01T${from}`,
  minutes,
  rrule: 'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR',
});

/** Bookings from eight to five on weekdays, in blocks of 30 to 180 minutes. */
function bookings(random: SeededRandom, percent: number): Interval[] {
  const busy: Interval[] = [];
  for (let day = 0; day < WEEKS * 7; day++) {
    if (day % 7 >= 5) continue;
    // Seven o'clock by universal time is eight in winter; the hour of summer makes no difference to the load.
    const opensMs = NOW_MS + day * DAY_MS + 60 * MINUTE_MS;
    for (let minute = 0; minute < 540;) {
      const length = Math.min(30 * (1 + random.nextBelow(6)), 540 - minute);
      const startMs = opensMs + minute * MINUTE_MS;
      if (random.nextBelow(100) < percent) busy.push({ startMs, endMs: startMs + length * MINUTE_MS });
      minute += length;
    }
  }
  return busy;
}

function drawnClinic(random: SeededRandom, id: string): PracticeSnapshot['clinics'][number] {
  const working = [hours('08:00', 540)];
  const percent = 70 + random.nextBelow(21);
  const several = (kind: string, count: number) =>
    Array.from({ length: count }, (_, at) => ({ id: `${id}-${kind}-${String(at)}`, busy: bookings(random, percent) }));
  return {
    id,
    name: id,
    zone: ZONE,
    opening: working,
    closures: [],
    protected: [],
    chairs: several('chair', 5).map((each) => ({ ...each, label: each.id, wheelchairRoom: true })),
    clinicians: several('clinician', 4).map((each) => ({
      ...each,
      name: each.id,
      skills: ['complete-dentures'],
      working,
      absences: [],
    })),
    assistants: several('assistant', 4).map((each) => ({ ...each, working, absences: [] })),
    kits: several('tracing-set', 2).map((each) => ({ ...each, code: 'tracing-set', reprocessingMinutes: 60 })),
  };
}

function drawnLaboratory(random: SeededRandom): PracticeSnapshot['laboratories'][number] {
  const steps = shippedPaths.flatMap((path) => path.labPhases.flatMap((phase) => phase.steps));
  return {
    id: 'laboratory',
    name: 'laboratory',
    labDays: { zone: ZONE, cutOffLocal: '12:00', openWeekdays: [1, 2, 3, 4, 5], closedOn: [] },
    sameRoofClinicIds: [],
    workCentres: [...new Set(steps.map(({ workCentre }) => workCentre))].map((code) => ({
      id: code,
      code,
      working: [hours('07:30', 540)],
      closures: [],
      places: [1, 2, 3].map((place) => ({
        id: `${code}-${String(place)}`,
        label: String(place),
        busy: bookings(random, 85),
      })),
      openBatches: [],
    })),
  };
}

/** A practice of invented clinics, 70 to 90 % booked, with one laboratory that is booked to 85 %. */
export function drawnPractice(clinics: number, seed: number): PracticeSnapshot {
  const clinicIds = Array.from({ length: clinics }, (_, at) => `clinic-${String(at)}`);
  return {
    clinics: clinicIds.map((id, at) => drawnClinic(seededRandom(seed, at + 1), id)),
    laboratories: [drawnLaboratory(seededRandom(seed))],
    couriers: clinicIds.map((clinicId, at) => ({
      id: `courier-${String(at)}`,
      clinicId,
      laboratoryId: 'laboratory',
      toLab: hours(ROUNDS[at % ROUNDS.length] ?? '', 60),
      toClinic: hours(ROUNDS[(at + 2) % ROUNDS.length] ?? '', 90),
    })),
  };
}

function drawnPatient(random: SeededRandom): PatientSnapshot {
  const weekdays = [1, 2, 3, 4, 5].filter(() => random.nextBelow(100) < 50);
  const away = Array.from({ length: 3 }, () => NOW_MS + random.nextBelow(WEEKS * 7) * DAY_MS);
  const mornings = random.nextBelow(100) < 50;
  return {
    id: 'patient',
    zone: ZONE,
    busy: [],
    otherVisits: [],
    wishes: { weekdays, from: mornings ? null : '13:00', to: mornings ? '12:00' : null },
    unavailableOn: [...new Set(away.map((ms) => new Date(ms).toISOString().slice(0, 10)))].sort(),
    escort: [],
    wheelchairRoom: false,
    travelMinutes: 20,
    chairMinutesPerDay: null,
    homeTravelMinutes: null,
  };
}

/** A conventional case for one arch whose patient accepts every clinic of the practice, each patient another one. */
export function drawnRequest(practice: PracticeSnapshot, seed: number, patient: number): PlanRequest {
  const path = shippedPaths.find(({ code }) => code === 'conventional');
  if (path === undefined) throw new Error('The conventional path is shipped.');
  const chain = combineArches({ upper: path });
  return {
    chain,
    progress: startProgress(chain),
    fixedStages: [],
    fixedSteps: [],
    practice,
    patient: drawnPatient(seededRandom(seed, 1_000_000 + patient)),
    wishes: { clinicIds: practice.clinics.map(({ id }) => id), clinicianId: null, laboratoryIds: ['laboratory'] },
    nowMs: NOW_MS,
    notBeforeMs: null,
    horizonWeeks: WEEKS,
    rush: false,
    lagOverrides: {},
    ignoreUnavailable: false,
  };
}
