import { courierRuns, isLabWorkingDay, toLocal } from '@archwright/calendar';
import type { ClinicSnapshot, LaboratorySnapshot, PracticeSnapshot } from '@archwright/protocol';
import {
  AppointmentStage,
  Clinic,
  Closure,
  LabStep,
  Patient,
  Stage,
  TreatmentPathVersion,
  claim,
  joinBatch,
  loadPatientSnapshot,
  loadSnapshot,
  openBatch,
  uuidv7,
  type SnapshotScope,
} from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { aCase, aHold, anAppointment, nth, type TestPractice } from '../records/records-practice.js';
import { NOW } from './demo-api.js';
import { openDemoRows, type DemoRows } from './demo-practice.js';

const ZONE = 'Europe/London';
const HOUR_MS = 3_600_000;
const WEEK_MS = 168 * HOUR_MS;
const NO_WISHES = { weekdays: [], from: null, to: null, unavailableOn: [] };

let demo: DemoRows;
let clinicIds: string[];
beforeAll(async () => {
  demo = await openDemoRows();
  const clinics = await demo.work((tx) => tx.find(Clinic, { order: { id: 'ASC' } }));
  clinicIds = clinics.map(({ id }) => id);
}, 60_000);
afterAll(() => demo.close());

/** Undoes what the example wrote: each begins with the practice as it was loaded. */
async function inUndone(work: (tx: EntityManager) => Promise<void>): Promise<void> {
  class Undone extends Error {}
  await demo
    .work(async (tx) => {
      await work(tx);
      throw new Undone();
    })
    .catch((error: unknown) => {
      if (!(error instanceof Undone)) throw error;
    });
}

const read = (tx: EntityManager, change: Partial<SnapshotScope> = {}, now = NOW): Promise<PracticeSnapshot> =>
  loadSnapshot(tx, { clinicIds, fromMs: now.getTime(), untilMs: now.getTime() + 4 * WEEK_MS, ...change }, now);

const north = ({ clinics }: PracticeSnapshot): ClinicSnapshot => nth(clinics, 0);
const laboratory = ({ laboratories }: PracticeSnapshot): LaboratorySnapshot => nth(laboratories, 0);
const centre = (snapshot: PracticeSnapshot, code: string) => {
  const found = laboratory(snapshot).workCentres.find((each) => each.code === code);
  if (found === undefined) throw new Error(`The laboratory has no work centre ${code}.`);
  return found;
};
const at = (time: string): Date => new Date(`2027-01-${time}:00Z`);
const span = (from: string, until: string) => ({ startMs: at(from).getTime(), endMs: at(until).getTime() });

describe('a snapshot of the practice', () => {
  it('shows each clinic with its own hours, and a person who works at two with the hours of each', async () => {
    await inUndone(async (tx) => {
      const snapshot = await read(tx);
      expect(snapshot.clinics.map(({ name }) => name)).toEqual(['North clinic', 'East clinic']);
      const days = snapshot.clinics.map(({ clinicians }) =>
        clinicians.find(({ name }) => name.includes('Thorne'))?.working.map(({ rrule }) => rrule),
      );
      expect(days).toEqual([['FREQ=WEEKLY;BYDAY=MO,TU,TH'], ['FREQ=WEEKLY;BYDAY=WE']]);
      expect(north(snapshot).kits.map(({ code }) => code)).toEqual(['tracing-set', 'tracing-set', 'surgical-set']);
      expect(north(snapshot).assistants).toHaveLength(2);
      const [turned] = (await read(tx, { clinicIds: [...clinicIds].reverse() })).clinics;
      expect(turned?.name).toBe('East clinic');
    });
  });

  it('gives every departure of a courier by the clock of the place it leaves', async () => {
    await inUndone(async (tx) => {
      const snapshot = await read(tx);
      const courier = nth(
        snapshot.couriers.filter(({ clinicId }) => clinicId === clinicIds[0]),
        0,
      );
      const day = span('05T00:00', '06T00:00');
      const times = (rule: typeof courier.toLab) =>
        courierRuns(rule, day).map(({ departsAtMs, arrivesAtMs }) => [
          toLocal(departsAtMs, ZONE).slice(11),
          (arrivesAtMs - departsAtMs) / 60_000,
        ]);
      expect(times(courier.toLab)).toEqual([
        ['11:00', 30],
        ['17:00', 30],
      ]);
      expect(times(courier.toClinic)).toEqual([
        ['08:15', 30],
        ['13:30', 30],
      ]);
    });
  });

  it('takes booked time and live holds for busy, and a hold that has expired for free', async () => {
    await inUndone(async (tx) => {
      const chair = nth(north(await read(tx)).chairs, 0).id;
      const { caseId } = await aCase(tx, await practiceOf(tx));
      const until = at('04T07:15');
      const hold = { id: await aHold(tx, caseId, until), until };
      const booked = { resourceId: chair, purpose: 'visit' as const, startsAt: at('05T09:00'), endsAt: at('05T10:00') };
      const held = { ...booked, startsAt: at('05T10:00'), endsAt: at('05T11:00'), hold };
      await claim(tx, [booked, held], NOW);
      const busy = async (now: Date) => nth(north(await read(tx, {}, now)).chairs, 0).busy;
      expect(await busy(at('04T07:14'))).toEqual([span('05T09:00', '05T11:00')]);
      expect(await busy(until)).toEqual([span('05T09:00', '05T10:00')]);
      const [without] = north(await read(tx, { withoutCaseIds: [caseId] })).chairs;
      expect(without?.busy).toEqual([span('05T09:00', '05T10:00')]);
    });
  });

  it('leaves out the visits of the cases to be planned, but not one that serves another case as well', async () => {
    await inUndone(async (tx) => {
      const practice = await practiceOf(tx);
      const chair = nth(practice.chairIds, 0);
      const [mine, other] = [await aCase(tx, practice), await aCase(tx, practice)];
      const visit = async (from: string, until: string, cases: readonly string[]) => {
        const times = { startsAt: at(from), endsAt: at(until) };
        const appointmentId = await anAppointment(tx, practice, { ...times, patientId: mine.patientId });
        for (const caseId of cases)
          await tx.insert(AppointmentStage, { id: uuidv7(), appointmentId, stageId: await aStage(tx, caseId) });
        await claim(tx, [{ ...times, resourceId: chair, purpose: 'visit', appointmentId }], NOW);
        await claim(tx, [{ ...times, resourceId: mine.patientId, purpose: 'visit', appointmentId }], NOW);
      };
      await visit('05T09:00', '05T10:00', [mine.caseId]);
      await visit('05T11:00', '05T12:00', [mine.caseId, other.caseId]);
      await visit('05T14:00', '05T15:00', [other.caseId]);
      await visit('04T05:00', '04T06:00', [other.caseId]);
      const kept = [span('05T11:00', '05T12:00'), span('05T14:00', '05T15:00')];
      const scope = { fromMs: NOW.getTime(), untilMs: NOW.getTime() + WEEK_MS, withoutCaseIds: [mine.caseId] };
      expect(nth(north(await read(tx, scope)).chairs, 0).busy).toEqual(kept);
      const onTheWay = { startsAt: at('05T15:00'), endsAt: at('05T15:20') };
      await claim(tx, [{ ...onTheWay, resourceId: mine.patientId, purpose: 'travel' }], NOW);
      const patient = await loadPatientSnapshot(tx, mine.patientId, { ...scope, wishes: NO_WISHES }, NOW);
      expect(patient?.busy).toEqual([span('05T11:00', '05T12:00'), span('05T14:00', '05T15:20')]);
      // Minutes in a chair count by day, so that this morning's count too.
      expect(patient?.otherVisits).toEqual([span('04T05:00', '04T06:00'), ...kept]);
    });
  });

  it('shows closures of clinic, person and chair, whole days by the clock of the clinic', async () => {
    await inUndone(async (tx) => {
      const { clinicians, chairs } = north(await read(tx));
      const [person, chair] = [nth(clinicians, 0).id, nth(chairs, 0).id];
      const closure = { id: uuidv7(), reason: 'Closed' };
      const days = { fromOn: '2027-01-11', untilOn: '2027-01-13' };
      const hours = { startsAt: at('14T13:00'), endsAt: at('14T17:00') };
      await tx.insert(Closure, { ...closure, ...days, clinicId: nth(clinicIds, 0) });
      await tx.insert(Closure, { ...closure, ...hours, id: uuidv7(), resourceId: person });
      await tx.insert(Closure, { ...closure, ...days, id: uuidv7(), resourceId: chair });
      await tx.insert(Closure, {
        ...closure,
        id: uuidv7(),
        clinicId: nth(clinicIds, 0),
        fromOn: '2026-10-01',
        untilOn: '2026-10-02',
      });
      const snapshot = north(await read(tx));
      expect(snapshot.closures).toEqual([{ zone: ZONE, firstOn: '2027-01-11', lastOn: '2027-01-12' }]);
      expect(nth(snapshot.clinicians, 0).absences).toEqual([span('14T13:00', '14T17:00')]);
      expect(nth(snapshot.chairs, 0).busy).toEqual([span('11T00:00', '13T00:00')]);
    });
  });

  it('keeps protected minutes until they are released, a day before they begin', async () => {
    await inUndone(async (tx) => {
      const first = async (now: string) => north(await read(tx, {}, at(now))).protected[0];
      expect(await first('04T11:00')).toEqual(span('05T12:00', '05T12:30'));
      expect(await first('04T12:00')).toEqual(span('06T12:00', '06T12:30'));
    });
  });

  it('counts laboratory days by its weekdays and whole closed days, while some closed hours stop only the benches', async () => {
    await inUndone(async (tx) => {
      const id = laboratory(await read(tx)).id;
      const closure = { laboratoryId: id, reason: 'Stocktaking' };
      await tx.insert(Closure, { ...closure, id: uuidv7(), fromOn: '2027-01-07', untilOn: '2027-01-09' });
      await tx.insert(Closure, { ...closure, id: uuidv7(), startsAt: at('12T13:00'), endsAt: at('12T17:00') });
      const snapshot = await read(tx);
      const { labDays } = laboratory(snapshot);
      const worked = ['06', '07', '08', '09', '10', '11', '12'].filter((day) =>
        isLabWorkingDay(`2027-01-${day}`, labDays),
      );
      expect(worked).toEqual(['06', '11', '12']);
      expect(centre(snapshot, 'wax').closures).toContainEqual(span('12T13:00', '12T17:00'));
      expect(centre(snapshot, 'wax').working.map(({ startsLocal }) => startsLocal.slice(11))).toEqual(['08:00']);
    });
  });

  it('offers a run with room, not one that is full, and counts the room of the case to be planned as free', async () => {
    await inUndone(async (tx) => {
      const practice = await practiceOf(tx);
      const curing = centre(await read(tx), 'curing');
      const batch = { placeId: nth(curing.places, 0).id, kind: 'curing-cycle' as const, size: 2 };
      const times = { startsAt: at('05T09:00'), endsAt: at('05T11:00') };
      const batchId = await openBatch(tx, { ...batch, ...times }, NOW);
      const mine = await aCase(tx, practice);
      const step = async (caseId: string) => {
        const id = uuidv7();
        await tx.insert(LabStep, {
          ...times,
          id,
          caseId,
          code: 'cure',
          arches: ['upper'],
          phase: 'finish',
          afterStage: 'V4',
          beforeStage: 'V5',
          laboratoryId: practice.laboratoryId,
          workCentreId: curing.id,
          segments: [],
          state: 'planned',
        });
        return id;
      };
      const runs = async (withoutCaseIds: string[] = []) =>
        centre(await read(tx, { withoutCaseIds }), 'curing').openBatches.map(({ id }) => id);
      const busy = async (withoutCaseIds: string[] = []) =>
        nth(centre(await read(tx, { withoutCaseIds }), 'curing').places, 0).busy.length;
      await joinBatch(tx, { batchId, labStepId: await step(mine.caseId), units: 1 });
      expect(await runs()).toEqual([batchId]);
      expect([await busy(), await busy([mine.caseId])]).toEqual([1, 0]);
      const other = await aCase(tx, practice);
      await joinBatch(tx, { batchId, labStepId: await step(other.caseId), units: 1 });
      expect(await runs()).toEqual([]);
      expect(await runs([mine.caseId])).toEqual([batchId]);
      expect([await busy(), await busy([mine.caseId])]).toEqual([1, 1]);
    });
  });

  it('has the wishes of the case in place of the patient’s own, but days away of both', async () => {
    await inUndone(async (tx) => {
      const scope = { fromMs: NOW.getTime(), untilMs: NOW.getTime() + WEEK_MS };
      const [alma] = await tx.find(Patient, { order: { id: 'ASC' }, take: 1 });
      const id = alma?.id ?? '';
      const own = { weekdays: [2, 4], from: '09:00', to: '12:30', unavailableOn: ['2027-01-06', '2027-02-01'] };
      await tx.update(Patient, { id }, { wishes: own });
      const ofCase = { weekdays: [5], from: null, to: '16:00', unavailableOn: ['2027-01-06', '2027-01-05'] };
      const escort = { weekdays: [1], from: '10:00', to: '12:00' };
      expect(await loadPatientSnapshot(tx, id, { ...scope, wishes: { ...ofCase, escort } }, NOW)).toMatchObject({
        zone: ZONE,
        busy: [],
        wishes: { weekdays: [5], from: null, to: '16:00' },
        unavailableOn: ['2027-01-05', '2027-01-06', '2027-02-01'],
        escort: [{ zone: ZONE, startsLocal: '2027-01-04T10:00', minutes: 120, rrule: 'FREQ=WEEKLY;BYDAY=MO' }],
        homeTravelMinutes: null,
      });
    });
  });

  it('knows no patient of another organisation', async () => {
    await inUndone(async (tx) => {
      const scope = { fromMs: NOW.getTime(), untilMs: NOW.getTime() + WEEK_MS, wishes: NO_WISHES };
      expect(await loadPatientSnapshot(tx, uuidv7(), scope, NOW)).toBeNull();
    });
  });

  it('asks the database as often for one clinic as for all', async () => {
    const one = await demo.countQueries((tx) => read(tx, { clinicIds: clinicIds.slice(0, 1) }));
    const all = await demo.countQueries((tx) => read(tx));
    expect(all).toBe(one);
    expect(all).toBeLessThanOrEqual(16);
  });
});

/** The demonstration practice as the builders of cases and visits want it. */
async function practiceOf(tx: EntityManager): Promise<TestPractice> {
  const snapshot = await read(tx);
  const { id: clinicId, chairs, clinicians } = north(snapshot);
  const wax = centre(snapshot, 'wax');
  const path = await tx.findOneByOrFail(TreatmentPathVersion, { code: 'conventional' });
  return {
    organisationId: demo.organisationId,
    clinicId,
    chairIds: chairs.map(({ id }) => id),
    clinicianIds: clinicians.map(({ id }) => id),
    laboratoryId: laboratory(snapshot).id,
    workCentreId: wax.id,
    placeIds: wax.places.map(({ id }) => id),
    pathVersionId: path.id,
  };
}

async function aStage(tx: EntityManager, caseId: string): Promise<string> {
  const id = uuidv7();
  const round = (await tx.countBy(Stage, { caseId })) + 1;
  await tx.insert(Stage, { id, caseId, code: 'V1', position: 0, round, arches: ['upper'], state: 'planned' });
  return id;
}
