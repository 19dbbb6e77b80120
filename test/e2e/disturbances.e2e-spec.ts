import { jest } from '@jest/globals';
import {
  caseView,
  importedCalendar,
  setupEntry,
  type CaseView,
  type DisturbanceView,
  type SetupEntry,
} from '@archwright/contracts';
import { Disturbance, LabStep, Occupancy, Outbox, TreatmentCase } from '@archwright/records';
import { IsNull, Not } from 'typeorm';
import { z } from 'zod';
import type { ApiSession } from '../../apps/cli/src/demo/api-session.js';
import { bookedCase, found, openBookingPractice, overlaps, type BookingPractice } from './booking-practice.js';
import { refusal } from './capture-chairside.js';
import { disturbanceDesk } from './disturbance-desk.js';

jest.setTimeout(300_000);

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const at = (ms: number): string => new Date(ms).toISOString();

describe('what falls away', () => {
  let practice: BookingPractice;
  let first: CaseView;
  let second: CaseView;
  let desk: ReturnType<typeof disturbanceDesk>;

  beforeAll(async () => {
    practice = await openBookingPractice();
    desk = disturbanceDesk(practice);
    first = await bookedCase(practice, { clinics: 1 });
    second = await bookedCase(practice, { clinics: 1 });
  });
  afterAll(() => practice.close());

  const caseNow = ({ id }: CaseView) => practice.desk.call({ method: 'GET', path: `/cases/${id}`, answer: caseView });

  const visitOf = ({ stages }: CaseView, index: number) =>
    found(stages.filter(({ appointmentId }) => appointmentId !== null)[index]);
  const clinicianOf = ({ id }: CaseView, stage: string) =>
    practice.rows(async (tx): Promise<string> => {
      const [row]: { id: string }[] = await tx.query(
        `SELECT a.clinician_id AS id FROM appointment a JOIN appointment_stage x ON x.appointment_id = a.id
         JOIN stage s ON s.id = x.stage_id WHERE s.case_id = $1 AND s.code = $2 AND a.state = 'booked'`,
        [id, stage],
      );
      return found(row).id;
    });
  /** Visits booked with a person within some time. */
  const bookedWith = (clinician: string, fromMs: number, untilMs: number) =>
    practice
      .rows((tx) => tx.findBy(Occupancy, { resourceId: clinician, appointmentId: Not(IsNull()) }))
      .then((rows) => rows.filter(({ startsAt, endsAt }) => startsAt.getTime() < untilMs && endsAt.getTime() > fromMs));

  describe('a clinician who is away for some days', () => {
    let disturbance: DisturbanceView;
    let clinician: string;
    let fromMs: number;
    let untilMs: number;

    beforeAll(async () => {
      const visit = visitOf(first, 1);
      clinician = await clinicianOf(first, visit.code);
      fromMs = Date.parse(`${found(visit.startsAt).slice(0, 10)}T00:00:00Z`);
      untilMs = fromMs + 2 * DAY_MS;
      disturbance = await desk.entered({ what: 'resource', id: clinician, startsAt: at(fromMs), endsAt: at(untilMs) });
    });

    it('names every case that it falls on and changes nothing', async () => {
      const held = await bookedWith(clinician, fromMs, untilMs);
      const named = disturbance.affected.flatMap(({ visits }) => visits.map(({ appointmentId }) => appointmentId));
      expect(named.sort()).toEqual([...new Set(held.map(({ appointmentId }) => found(appointmentId)))].sort());
      expect(named.length).toBeGreaterThan(0);
      const { stages } = await caseNow(first);
      expect(stages).toEqual(first.stages);
    });

    it('proposes plans with their calls and a bound, of which none is worse than another in every way', () => {
      expect(disturbance.state).toBe('planned');
      const { proposals } = disturbance;
      expect(proposals.length).toBeGreaterThan(0);
      for (const proposal of proposals) {
        expect(proposal.leastMovedVisits).toBeLessThanOrEqual(proposal.movedVisits);
        expect(proposal.left).toEqual([]);
        expect(proposal.ripples.every(({ calls, visits }) => visits.length === 0 || calls.length === 1)).toBe(true);
      }
      expect(found(proposals[0]).movedVisits).toBe(Math.min(...proposals.map(({ movedVisits }) => movedVisits)));
    });

    it('refuses another hash than the one shown, and asks for fresh plans when a case has changed', async () => {
      expect(await refusal(desk.accept(disturbance, 'of another plan'))).toMatchObject({ status: 409 });
      const { caseId } = found(found(disturbance.proposals[0]).ripples[0]);
      await practice.rows((tx) => tx.increment(TreatmentCase, { id: caseId }, 'version', 1));
      expect(await refusal(desk.accept(disturbance))).toMatchObject({
        status: 409,
        problem: { code: 'casework.plan-conflict' },
      });
      const asked = await practice.rows((tx) =>
        tx.countBy(Outbox, { kind: 'repair-disturbance', dispatchedAt: IsNull() }),
      );
      expect(asked).toBeGreaterThan(0);
      await desk.propose(disturbance.id);
      disturbance = await desk.read(disturbance.id);
      expect(disturbance.proposals.length).toBeGreaterThan(0);
    });

    it('books all of it in one go, and keeps everybody out of the time', async () => {
      const proposal = found(disturbance.proposals[0]);
      const accepted = await desk.accept(disturbance);
      expect(accepted.state).toBe('accepted');
      expect(await bookedWith(clinician, fromMs, untilMs)).toEqual([]);
      for (const { caseId, plan } of proposal.ripples) {
        const { stages } = await caseNow({ id: caseId } as CaseView);
        for (const visit of plan.visits) {
          const booked = stages.find(({ code, state }) => visit.stages.includes(code) && state !== 'dropped');
          expect(booked?.startsAt).toBe(visit.startsAt);
        }
      }
      const closed = await practice.rows((tx) => tx.countBy(Occupancy, { resourceId: clinician, purpose: 'absence' }));
      expect(closed).toBeGreaterThan(0);
      expect(await overlaps(practice)).toBe(0);
      expect(await refusal(desk.accept(disturbance))).toMatchObject({ status: 412 });
    });
  });

  it('puts work on another place or into another order when a bench place breaks down, and moves no visit', async () => {
    const steps = await practice.rows((tx) => tx.findBy(LabStep, { caseId: second.id, placeId: Not(IsNull()) }));
    const step = found(steps.find(({ batchId }) => batchId === null));
    const startsAt = found(step.startsAt);
    const broken = await desk.entered({
      what: 'resource',
      id: found(step.placeId),
      startsAt: startsAt.toISOString(),
      endsAt: at(startsAt.getTime() + 4 * HOUR_MS),
    });
    expect(broken.affected.map(({ caseId }) => caseId)).toContain(second.id);
    const proposal = found(broken.proposals[0]);
    expect(proposal.movedVisits).toBe(0);
    expect(['absorbed', 'resequenced']).toContain(proposal.reach);
    const before = await caseNow(second);
    await desk.accept(broken);
    const after = await caseNow(second);
    expect(after.stages.map(({ startsAt: start }) => start)).toEqual(before.stages.map(({ startsAt: start }) => start));
    const moved = await practice.rows((tx) => tx.findOneByOrFail(LabStep, { id: step.id }));
    const isElsewhere = moved.placeId !== step.placeId || found(moved.startsAt).getTime() !== startsAt.getTime();
    expect(isElsewhere).toBe(true);
    expect(await overlaps(practice)).toBe(0);
  });

  it('plans a visit anew whose patient cannot come for a while', async () => {
    const visit = visitOf(await caseNow(second), 2);
    const endMs = Date.parse(found(visit.endsAt)) + 3 * DAY_MS;
    const lost = await desk.entered({
      what: 'visit',
      id: found(visit.appointmentId),
      startsAt: found(visit.startsAt),
      endsAt: at(endMs),
    });
    await desk.accept(lost);
    const again = found((await caseNow(second)).stages.find(({ code }) => code === visit.code));
    const startMs = Date.parse(found(again.startsAt));
    expect(startMs >= endMs || startMs < Date.parse(found(visit.startsAt))).toBe(true);
  });

  it('closes the time and leaves visits where they are, or forgets it, as a person decides', async () => {
    const visit = visitOf(await caseNow(first), 3);
    const clinician = await clinicianOf(first, visit.code);
    const time = { startsAt: found(visit.startsAt), endsAt: found(visit.endsAt) };
    const mistaken = await desk.entered({ what: 'resource', id: clinician, ...time });
    expect((await desk.decide(mistaken, 'withdraw')).state).toBe('withdrawn');
    const known = await desk.entered({ what: 'resource', id: clinician, ...time });
    expect((await desk.decide(known, 'keep')).state).toBe('kept');
    const still = found((await caseNow(first)).stages.find(({ code }) => code === visit.code));
    expect(still.startsAt).toBe(visit.startsAt);
  });

  describe('a closure that falls on a booked visit', () => {
    let manager: ApiSession;
    let clinician: string;
    let visit: CaseView['stages'][number];
    let closure: SetupEntry;
    beforeAll(async () => {
      manager = await practice.signIn('manager');
      visit = visitOf(await caseNow(second), 3);
      clinician = await clinicianOf(second, visit.code);
    });

    const ofClosure = (closureId: string) => practice.rows((tx) => tx.findBy(Disturbance, { closureId }));
    /** The whole day, by the clock of the clinic. */
    const away = (day: string) => {
      const of = { kind: 'resource', id: clinician };
      return { kind: 'closure', of, fromOn: day, lastOn: day, fromLocal: null, untilLocal: null, reason: 'A course' };
    };
    const dayOf = (instant: string | null): string => found(instant).slice(0, 10);

    it('has repairs looked for as if somebody had entered it, which the time does not wait for', async () => {
      const body = away(dayOf(visit.startsAt));
      closure = await manager.call({ method: 'POST', path: '/setup/records', body, answer: setupEntry });
      const row = found((await ofClosure(closure.id))[0]);
      expect(row).toMatchObject({ state: 'open', resourceId: clinician, reason: 'A course' });
      await desk.propose(row.id);
      const known = await desk.read(row.id);
      expect(known).toMatchObject({ state: 'planned', isClosed: true });
      expect(known.affected.map(({ caseId }) => caseId)).toContain(second.id);
    });

    it('is not taken back while the closure is in force, but with it', async () => {
      const known = await desk.read(found((await ofClosure(closure.id))[0]).id);
      expect(await refusal(desk.decide(known, 'withdraw'))).toMatchObject({
        status: 409,
        problem: { detail: 'The time is closed already; accepted: taking the closure away, which withdraws this.' },
      });
      await manager.call({ method: 'DELETE', path: `/setup/closures/${closure.id}`, answer: z.undefined() });
      expect(await desk.read(known.id)).toMatchObject({ state: 'withdrawn', isClosed: false });
    });

    it('is looked at again when its time changes', async () => {
      const body = away(dayOf(visit.startsAt));
      const entry = await manager.call({ method: 'POST', path: '/setup/records', body, answer: setupEntry });
      const first = found((await ofClosure(entry.id))[0]);
      const far = away('2027-12-24');
      const path = `/setup/records/${entry.id}`;
      closure = await manager.call({ method: 'PUT', path, version: entry.version, body: far, answer: setupEntry });
      expect(await desk.read(first.id)).toMatchObject({ state: 'withdrawn' });
      expect((await ofClosure(entry.id)).filter(({ state }) => state === 'open')).toEqual([]);
      closure = await manager.call({ method: 'PUT', path, version: closure.version, body, answer: setupEntry });
      expect((await ofClosure(entry.id)).filter(({ state }) => state === 'open')).toHaveLength(1);
    });

    it('may be a busy time of an imported calendar, and goes with it', async () => {
      const first = visitOf(await caseNow(second), 4);
      const resourceId = await clinicianOf(second, first.code);
      const stamp = (instant: string | null) => new Date(found(instant)).toISOString().replace(/[-:]|\.000/g, '');
      const lines = (summary: string) => [
        'BEGIN:VCALENDAR',
        'VERSION:2.0',
        'PRODID:-//Test//EN',
        summary,
        'END:VCALENDAR',
      ];
      const event = ['BEGIN:VEVENT', 'UID:a', `DTSTAMP:${stamp(first.startsAt)}`, `DTSTART:${stamp(first.startsAt)}`];
      const busy = lines([...event, `DTEND:${stamp(first.endsAt)}`, 'END:VEVENT'].join('\r\n')).join('\r\n');
      const read = (calendar: string) =>
        practice.desk.call({
          method: 'POST',
          path: `/resources/${resourceId}/calendar`,
          body: { source: 'courses', calendar },
          answer: importedCalendar,
        });
      const undecided = () =>
        practice.rows((tx) => tx.findBy(Disturbance, { resourceId, reason: 'Imported calendar', state: 'open' }));
      expect(await read(busy)).toMatchObject({ busy: 1, conflicts: 1, disturbances: 1 });
      expect(await undecided()).toHaveLength(1);
      expect(await read(busy)).toMatchObject({ unchanged: 1, conflicts: 1, disturbances: 0 });
      expect(await undecided()).toHaveLength(1);
      expect(await read(lines('X-COMMENT:none').join('\r\n'))).toMatchObject({ gone: 1, disturbances: 0 });
      expect(await undecided()).toEqual([]);
    });

    it('takes the time that a repair sets free, under the closure that is in force', async () => {
      const { id } = found((await ofClosure(closure.id)).find(({ state }) => state === 'open'));
      await desk.propose(id);
      expect((await desk.accept(await desk.read(id))).state).toBe('accepted');
      const startsAt = new Date(found(visit.startsAt));
      const taken = await practice.rows((tx) => tx.findBy(Occupancy, { resourceId: clinician }));
      const then = taken.filter((each) => each.startsAt <= startsAt && each.endsAt > startsAt);
      expect(then.map(({ closureId }) => closureId)).toEqual([closure.id]);
    });

    it('is not asked about again once a person has left the visits where they are, whatever its reason becomes', async () => {
      const kept = visitOf(await caseNow(second), 5);
      const of = { kind: 'resource', id: await clinicianOf(second, kept.code) };
      const body = { ...away(dayOf(kept.startsAt)), of };
      const entry = await manager.call({ method: 'POST', path: '/setup/records', body, answer: setupEntry });
      const asked = await desk.read(found((await ofClosure(entry.id))[0]).id);
      expect(asked.affected.map(({ caseId }) => caseId)).toContain(second.id);
      expect((await desk.decide(asked, 'keep')).state).toBe('kept');
      const path = `/setup/records/${entry.id}`;
      const renamed = { ...body, reason: 'Another course' };
      await manager.call({ method: 'PUT', path, version: entry.version, body: renamed, answer: setupEntry });
      expect((await ofClosure(entry.id)).map(({ state }) => state)).toEqual(['kept']);
    });
  });

  it('refuses what is over, and says what would be accepted', async () => {
    const { id } = found(practice.practice.clinics[0]);
    const past = { what: 'clinic', id, startsAt: '2026-12-01T08:00:00Z', endsAt: '2026-12-02T08:00:00Z' } as const;
    expect(await refusal(desk.entered(past))).toMatchObject({ status: 400 });
  });
});
