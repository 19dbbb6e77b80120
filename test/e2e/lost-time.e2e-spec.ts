import { jest } from '@jest/globals';
import { appointmentView, caseView, disturbancePage, disturbanceSubjects, type CaseView } from '@archwright/contracts';
import { Appointment, LabStep, Occupancy, Resource } from '@archwright/records';
import { NOW, bookedCase, found, openBookingPractice, overlaps, type BookingPractice } from './booking-practice.js';
import { disturbanceDesk } from './disturbance-desk.js';

jest.setTimeout(300_000);

const MINUTE_MS = 60_000;
const DAY_MS = 1440 * MINUTE_MS;
const at = (ms: number): string => new Date(ms).toISOString();

describe('lost time', () => {
  let practice: BookingPractice;
  let now: Date;
  let desk: ReturnType<typeof disturbanceDesk>;
  let first: CaseView;

  beforeAll(async () => {
    practice = await openBookingPractice();
    now = NOW;
    desk = disturbanceDesk(practice, () => now);
    first = await bookedCase(practice, { clinics: 1 });
  });
  afterAll(() => practice.close());

  const caseNow = () => practice.desk.call({ method: 'GET', path: `/cases/${first.id}`, answer: caseView });
  const visit = (index: number) => found(first.stages.filter(({ appointmentId }) => appointmentId !== null)[index]);
  const rowOf = (index: number) =>
    practice.rows((tx) => tx.findOneByOrFail(Appointment, { id: found(visit(index).appointmentId) }));
  const takenBy = async (index: number) => {
    const rows = await practice.rows((tx) =>
      tx.findBy(Occupancy, { appointmentId: found(visit(index).appointmentId) }),
    );
    return rows.map(({ resourceId, startsAt, endsAt }) => [resourceId, startsAt, endsAt]).sort();
  };
  const listed = async () =>
    (await practice.desk.call({ method: 'GET', path: '/disturbances?limit=50', answer: disturbancePage })).items;
  const act = async (index: number, action: 'arrive' | 'start') => {
    const path = `/appointments/${found(visit(index).appointmentId)}`;
    const { version } = await practice.desk.call({ method: 'GET', path, answer: appointmentView });
    const body = { action };
    await practice.desk.call({ method: 'POST', path: `${path}/actions`, version, body, answer: appointmentView });
  };

  it('leaves visits that are too near to move as they are, with everybody and everything they need', async () => {
    const before = await rowOf(0);
    const taken = await takenBy(0);
    const away = await rowOf(1);
    const time = { startsAt: away.startsAt.toISOString(), endsAt: away.endsAt.toISOString() };
    const lost = await desk.entered({ what: 'resource', id: away.clinicianId, ...time });
    const ripple = found(found(lost.proposals[0]).ripples.find(({ caseId }) => caseId === first.id));
    expect(ripple.visits.map(({ appointmentId }) => appointmentId)).not.toContain(before.id);
    await desk.accept(lost);
    expect(await rowOf(0)).toEqual(before);
    expect(await takenBy(0)).toEqual(taken);
    expect(await overlaps(practice)).toBe(0);
  });

  it('is given up by what is to come while a visit that has begun in it goes on', async () => {
    first = await caseNow();
    const begun = await rowOf(0);
    now = new Date(begun.startsAt.getTime() + 5 * MINUTE_MS);
    await practice.moveClock(now);
    await act(0, 'arrive');
    await act(0, 'start');
    const taken = await takenBy(0);
    const next = await rowOf(1);
    const lost = await desk.entered({
      what: 'resource',
      id: begun.clinicianId,
      startsAt: at(now.getTime()),
      endsAt: at(next.endsAt.getTime() + DAY_MS),
    });
    expect(lost.affected.map(({ caseId }) => caseId)).toContain(first.id);
    expect((await desk.accept(lost)).state).toBe('accepted');
    expect((await rowOf(0)).state).toBe('in-progress');
    expect(await takenBy(0)).toEqual(taken);
    expect(await overlaps(practice)).toBe(0);
  });

  it('of a clinic is time of its chairs too, so that nobody is booked there', async () => {
    first = await caseNow();
    const { clinicId, startsAt, endsAt } = await rowOf(2);
    const chairs = found(practice.practice.clinics.find(({ id }) => id === clinicId)).chairs.map(({ id }) => id);
    const time = { startsAt: startsAt.toISOString(), endsAt: endsAt.toISOString() };
    const closed = async () => {
      const rows = await practice.rows((tx) => tx.findBy(Occupancy, { purpose: 'closure' }));
      return [...new Set(rows.filter((row) => row.startsAt < endsAt).map(({ resourceId }) => resourceId))].sort();
    };
    expect(await closed()).toEqual([]);
    const lost = await desk.entered({ what: 'clinic', id: clinicId, ...time });
    await desk.accept(lost);
    expect(await closed()).toEqual([...chairs].sort());
    expect(await overlaps(practice)).toBe(0);
  });

  describe('of late work', () => {
    /** A step that keeps a place for itself, and the next work there. */
    const twoAtOnePlace = () =>
      practice.rows(async (tx) => {
        const [pair]: { stepId: string; endsAt: Date; nextStartsAt: Date; nextEndsAt: Date }[] = await tx.query(
          `SELECT l.id AS "stepId", l.ends_at AS "endsAt", n.starts_at AS "nextStartsAt", n.ends_at AS "nextEndsAt"
           FROM lab_step l JOIN occupancy o ON o.lab_step_id = l.id
             JOIN occupancy n ON n.resource_id = o.resource_id AND n.lab_step_id <> l.id AND n.starts_at > l.ends_at
           WHERE l.state IN ('planned', 'ready') AND l.batch_id IS NULL ORDER BY n.starts_at - l.ends_at LIMIT 1`,
        );
        return found(pair);
      });

    it('keeps its place for as long as it is free, and nobody else is put off', async () => {
      await bookedCase(practice, { clinics: 1 });
      const { stepId, endsAt, nextStartsAt, nextEndsAt } = await twoAtOnePlace();
      const time = { startsAt: endsAt.toISOString(), endsAt: nextEndsAt.toISOString() };
      const late = await desk.entered({ what: 'lab-step', id: stepId, ...time });
      expect((await desk.decide(late, 'keep')).state).toBe('kept');
      const [step, taken] = await practice.rows(async (tx) => [
        await tx.findOneByOrFail(LabStep, { id: stepId }),
        await tx.findBy(Occupancy, { labStepId: stepId }),
      ]);
      expect(step.endsAt).toEqual(nextEndsAt);
      expect(Math.max(...taken.map((each) => each.endsAt.getTime()))).toBeLessThanOrEqual(nextStartsAt.getTime());
      expect(await overlaps(practice)).toBe(0);
    });

    it('is nothing once the work is out of the plan: it can be seen and taken back', async () => {
      const { stepId, endsAt } = await twoAtOnePlace();
      const time = { startsAt: endsAt.toISOString(), endsAt: at(endsAt.getTime() + DAY_MS) };
      const { id } = await desk.entered({ what: 'lab-step', id: stepId, ...time });
      const nowhere = { laboratoryId: null, workCentreId: null, placeId: null, startsAt: null, endsAt: null };
      await practice.rows((tx) => tx.update(LabStep, { id: stepId }, { ...nowhere, segments: [], state: 'unplanned' }));
      await practice.rows((tx) => tx.delete(Occupancy, { labStepId: stepId }));
      await desk.propose(id);
      const seen = await desk.read(id);
      expect(seen).toMatchObject({ what: 'lab-step', affected: [], proposals: [] });
      expect(seen.noProposalReason).toContain('nothing has to move');
      expect((await listed()).map((each) => each.id)).toContain(id);
      expect((await desk.decide(seen, 'withdraw')).state).toBe('withdrawn');
    });
  });

  it('of somebody or something that was taken out of use since keeps its name', async () => {
    const chair = found(practice.practice.clinics[0]?.chairs[0]);
    const time = { startsAt: '2027-03-20T09:00:00Z', endsAt: '2027-03-20T10:00:00Z' };
    const lost = await desk.entered({ what: 'resource', id: chair.id, ...time });
    await practice.rows((tx) => tx.update(Resource, { id: chair.id }, { retiredAt: now }));
    expect(await desk.read(lost.id)).toMatchObject({ label: chair.label });
    expect((await listed()).map(({ id }) => id)).toContain(lost.id);
    const answer = disturbanceSubjects;
    const { items } = await practice.desk.call({ method: 'GET', path: '/disturbances/subjects', answer });
    expect(items.map(({ id }) => id)).not.toContain(chair.id);
    expect((await desk.decide(lost, 'keep')).state).toBe('kept');
  });
});
