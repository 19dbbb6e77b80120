import {
  alternativesView,
  appointmentView,
  caseView,
  dayBoard,
  offersView,
  problem,
  ripple,
  type CasePlan,
  type CaseView,
} from '@archwright/contracts';
import { HomeVisit, Occupancy } from '@archwright/records';
import { booked, caseOf, openTwoPractices, patientOf, type TwoPractices } from './cases-client.js';

type Visit = CasePlan['visits'][number];
const WAY = 30;
const HOME = { place: 'care-home', travelMinutes: WAY };

describe('visits at home over HTTP', () => {
  let two: TwoPractices;
  beforeAll(async () => {
    two = await openTwoPractices();
  }, 60_000);
  afterAll(() => two.close());

  const homeCase = (over: Record<string, unknown> = {}) => caseOf(two.desk, { visitPlace: HOME, ...over }, 'repair');
  const firstStage = ({ stages }: CaseView) => {
    const stage = stages.find(({ appointmentId }) => appointmentId !== null);
    if (stage?.startsAt == null || stage.endsAt === null || stage.appointmentId === null)
      throw new Error('A visit is booked.');
    return { appointmentId: stage.appointmentId, startMs: Date.parse(stage.startsAt), endMs: Date.parse(stage.endsAt) };
  };
  /** Time taken for a visit: kind of the resource, purpose, and minutes from the visit's start and end. */
  const takenBy = async ({ appointmentId, startMs, endMs }: ReturnType<typeof firstStage>) => {
    const rows: { kind: string; purpose: string; startsAt: Date; endsAt: Date }[] = await two.rows((tx) =>
      tx.query(
        `SELECT r.kind, o.purpose, o.starts_at AS "startsAt", o.ends_at AS "endsAt"
         FROM occupancy o JOIN resource r ON r.id = o.resource_id WHERE o.appointment_id = $1`,
        [appointmentId],
      ),
    );
    return rows.map(({ kind, purpose, startsAt, endsAt }) => ({
      kind,
      purpose,
      from: (startsAt.getTime() - startMs) / 60_000,
      until: (endsAt.getTime() - endMs) / 60_000,
    }));
  };

  it('offers visits without a chair, with the way of the clinician', async () => {
    const { id, visitPlace } = await homeCase();
    expect(visitPlace).toEqual(HOME);
    const { offers } = await two.desk.get(`POST /cases/${id}/offers`, offersView, { body: { count: 1 } });
    const visits: Visit[] = offers[0]?.plan.visits ?? [];
    expect(visits.length).toBeGreaterThan(0);
    for (const visit of visits) {
      expect(visit).toMatchObject({ chairId: null, chairLabel: '', homeTravelMinutes: WAY });
    }
  });

  it('books the clinician for the way there and back, and no chair', async () => {
    const opened = await homeCase();
    const visit = firstStage(await booked(two.desk, opened.id));
    const taken = await takenBy(visit);
    const length = (visit.endMs - visit.startMs) / 60_000;
    const clinician = taken.filter(({ kind }) => kind === 'clinician').sort((a, b) => a.from - b.from);
    expect(clinician).toEqual([
      { kind: 'clinician', purpose: 'travel', from: -WAY, until: -length },
      { kind: 'clinician', purpose: 'visit', from: 0, until: 0 },
      { kind: 'clinician', purpose: 'travel', from: length, until: WAY },
    ]);
    expect(taken.filter(({ kind }) => kind === 'chair')).toEqual([]);
    expect(taken.filter(({ kind }) => kind === 'patient')).toMatchObject([{ purpose: 'visit', from: 0, until: 0 }]);
    const kept = await two.rows((tx) => tx.findBy(HomeVisit, { appointmentId: visit.appointmentId }));
    expect(kept).toMatchObject([{ placeKind: 'care-home', travelBlockMinutes: 2 * WAY }]);
    const on = new Date(visit.startMs).toISOString().slice(0, 10);
    const day = await two.desk.get(`GET /appointments?on=${on}`, dayBoard);
    expect(day.appointments.find(({ id }) => id === visit.appointmentId)).toMatchObject({
      place: 'care-home',
      chairId: null,
      homeTravelMinutes: WAY,
    });
  });

  it('moves to a start that it was offered with its way, and gives everything back when it is cancelled', async () => {
    const opened = await homeCase();
    const before = firstStage(await booked(two.desk, opened.id));
    const path = `/appointments/${before.appointmentId}`;
    const { starts } = await two.desk.get(`GET ${path}/alternatives`, alternativesView);
    const startsAt = starts[0]?.startsAt ?? '';
    const preview = await two.desk.get('POST /ripples/move', ripple, {
      body: { appointmentId: before.appointmentId, startsAt, clinicianId: starts[0]?.clinicianId },
    });
    expect(preview.visits[0]).toMatchObject({ appointmentId: before.appointmentId, after: startsAt });
    const apply = { body: { planHash: preview.planHash } };
    const moved = firstStage(await two.desk.get(`POST /ripples/${preview.id}/apply`, caseView, apply));
    expect(moved).toMatchObject({ appointmentId: before.appointmentId, startMs: Date.parse(startsAt) });
    const travels = (await takenBy(moved)).filter(({ kind, purpose }) => kind === 'clinician' && purpose === 'travel');
    expect(travels.map(({ from }) => from).sort((a, b) => a - b)[0]).toBe(-WAY);
    const cancel = await two.desk.get('POST /ripples/cancel', ripple, {
      body: { appointmentId: before.appointmentId, reason: 'In hospital.', then: 'drop-rest' },
    });
    await two.desk.get(`POST /ripples/${cancel.id}/apply`, caseView, { body: { planHash: cancel.planHash } });
    const { appointmentId } = before;
    expect(await two.rows((tx) => tx.countBy(Occupancy, { appointmentId }))).toBe(0);
  });

  it('says where to go and how to get in, and of a visit at the clinic neither', async () => {
    const where = { address: '3 Example Lane, ward 2', accessNote: 'Ring for the ward.' };
    const patient = await patientOf(two.desk, where);
    expect(patient).toMatchObject(where);
    const appointmentOf = async (over: Record<string, unknown>) => {
      const opened = await caseOf(two.desk, { patientId: patient.id, ...over }, 'repair');
      const { appointmentId } = firstStage(await booked(two.desk, opened.id));
      return two.clinician.get(`GET /appointments/${appointmentId}`, appointmentView);
    };
    expect(await appointmentOf({ visitPlace: HOME })).toMatchObject({ place: 'care-home', ...where });
    expect(await appointmentOf({})).toMatchObject({ place: 'clinic', address: null, accessNote: null });
  });

  it('changes the place for what is planned from then on, from the version that was seen', async () => {
    const opened = await caseOf(two.desk, {}, 'repair');
    expect(opened.visitPlace).toEqual({ place: 'clinic', travelMinutes: null });
    const change = (body: unknown, version = opened.version, person = two.desk) =>
      person.ask(`PUT /cases/${opened.id}/visit-place`, { body, version });
    expect((await change({ place: 'garden' })).status).toBe(400);
    expect((await change({ place: 'clinic', travelMinutes: 5 })).status).toBe(400);
    expect((await change(HOME, opened.version, two.bench)).status).toBe(403);
    expect((await change(HOME, opened.version, two.stranger)).status).toBe(404);
    const answer = await change({ place: 'home' });
    const changed = caseView.parse(answer.body);
    expect(changed).toMatchObject({ version: 2, visitPlace: { place: 'home', travelMinutes: 25 } });
    expect(changed.events.at(-1)?.sentence).toBe("Visits are planned at the patient's home.");
    const late = await change({ place: 'clinic' });
    expect([late.status, problem.parse(late.body).code]).toEqual([412, 'platform.precondition-failed']);
    const { offers } = await two.desk.get(`POST /cases/${opened.id}/offers`, offersView, { body: { count: 1 } });
    expect(offers[0]?.plan.visits.every(({ homeTravelMinutes }) => homeTravelMinutes === 25)).toBe(true);
  });
});
