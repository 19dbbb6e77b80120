import type { Interval, LocalRule } from '@archwright/calendar';
import type { CaseChain } from '../case-chain.js';
import { startProgress } from '../progress.js';
import type { ClinicSnapshot, LaboratorySnapshot, PracticeSnapshot } from '../snapshot.js';
import type { PlanRequest } from './request.js';

const WEEKDAYS = 'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR';

export const hours = (zone: string, from: string, minutes: number): LocalRule => ({
  zone,
  startsLocal: `2026-01-01T${from}`,
  minutes,
  rrule: WEEKDAYS,
});

const CENTRES = [
  'cast-room',
  'scanning',
  'design',
  'printing',
  'wax',
  'articulator',
  'tooth-set-up',
  'processing',
  'curing',
  'finishing',
  'checking',
];

/** A clinic with two clinicians and two chairs, open on weekdays from 8 to 17 local time. */
export function aClinic(zone: string, change: Partial<ClinicSnapshot> = {}): ClinicSnapshot {
  const working = [hours(zone, '08:00', 540)];
  const skills = ['complete-dentures', 'oral-surgery', 'implant-surgery'];
  const person = (id: string) => ({ id, name: id, skills, working, absences: [], busy: [] });
  return {
    id: 'clinic',
    name: 'Clinic',
    zone,
    opening: working,
    closures: [],
    protected: [],
    chairs: ['chair-1', 'chair-2'].map((id) => ({ id, label: id, wheelchairRoom: true, busy: [] })),
    clinicians: [person('clinician-1'), person('clinician-2')],
    assistants: ['assistant-1', 'assistant-2'].map((id) => ({ id, working, absences: [], busy: [] })),
    kits: ['tracing-set', 'surgical-set'].map((code) => ({ id: `${code}-1`, code, reprocessingMinutes: 90, busy: [] })),
    ...change,
  };
}

/** A laboratory with two places at every work centre, open on weekdays from 7:30 to 16:30 local time. */
export function aLaboratory(zone: string, change: Partial<LaboratorySnapshot> = {}): LaboratorySnapshot {
  return {
    id: 'laboratory',
    name: 'Laboratory',
    labDays: { zone, cutOffLocal: '12:00', openWeekdays: [1, 2, 3, 4, 5], closedOn: [] },
    sameRoofClinicIds: [],
    workCentres: CENTRES.map((code) => ({
      id: `centre-${code}`,
      code,
      working: [hours(zone, '07:30', 540)],
      closures: [],
      places: [1, 2].map((place) => ({ id: `${code}-${String(place)}`, label: String(place), busy: [] as Interval[] })),
      openBatches: [],
    })),
    ...change,
  };
}

/** One clinic, one laboratory, a courier out at 17:15 arriving next morning and home at 15:00 arriving the next morning. */
export function aPractice(zone: string, change: Partial<PracticeSnapshot> = {}): PracticeSnapshot {
  const run = (at: string, minutes: number) => hours(zone, at, minutes);
  return {
    clinics: [aClinic(zone)],
    laboratories: [aLaboratory(zone)],
    couriers: [
      {
        id: 'courier',
        clinicId: 'clinic',
        laboratoryId: 'laboratory',
        toLab: run('17:15', 870),
        toClinic: run('15:00', 1020),
      },
    ],
    ...change,
  };
}

/** A request for a case at its beginning. */
export function aRequest(
  chain: CaseChain,
  zone: string,
  nowMs: number,
  change: Partial<PlanRequest> = {},
): PlanRequest {
  return {
    chain,
    progress: startProgress(chain),
    fixedStages: [],
    fixedSteps: [],
    practice: aPractice(zone),
    patient: {
      id: 'patient',
      zone,
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
    wishes: { clinicIds: ['clinic'], clinicianId: null, laboratoryIds: ['laboratory'] },
    nowMs,
    notBeforeMs: null,
    horizonWeeks: 12,
    rush: false,
    lagOverrides: {},
    ignoreUnavailable: false,
    ...change,
  };
}
