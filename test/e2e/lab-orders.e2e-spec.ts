import { In } from 'typeorm';
import { sweep } from '@archwright/casework';
import {
  caseView,
  labOrderPage,
  labOrderView,
  loadView,
  offersView,
  practiceView,
  problem,
  type CaseView,
} from '@archwright/contracts';
import {
  AuditEntry,
  Clinic,
  LabExchange,
  Laboratory,
  Notice,
  Occupancy,
  Patient,
  SentOrder,
  TreatmentCase,
} from '@archwright/records';
import { found } from './booking-practice.js';
import { openTwoPractices, type Person, type TwoPractices } from './cases-client.js';
import { aSignedCase, answered, openPartner, sent, type Partner } from './partner-laboratory.js';

const NOW = new Date('2027-01-04T07:30:00Z');
const PROMISED = '2027-01-07T12:00:00.000Z';

describe('orders to a laboratory of its own', () => {
  let two: TwoPractices;
  let partner: Partner;
  let third: Partner;
  beforeAll(async () => {
    two = await openTwoPractices();
    partner = await openPartner(two);
    third = await openPartner(two);
  }, 90_000);
  afterAll(() => two.close());

  const settle = async () => {
    await sweep(two.api.db, two.organisationId, NOW);
  };
  const caseNow = ({ id }: CaseView) => two.desk.get(`GET /cases/${id}`, caseView);
  const stepsOf = (view: CaseView, stageId: string) => {
    const stage = view.stages.find(({ id }) => id === stageId)?.code;
    return view.labSteps.filter(({ afterStage }) => afterStage === stage);
  };
  const statesOf = (view: CaseView, stageId: string) => [...new Set(stepsOf(view, stageId).map(({ state }) => state))];
  const act = (person: Person, order: { id: string; version: number }, body: Record<string, unknown>) =>
    person.ask(`POST /lab-orders/${order.id}/actions`, { version: order.version, body });
  const noticesOf = ({ id }: CaseView, kind: string) => two.rows((tx) => tx.countBy(Notice, { caseId: id, kind }));
  const ownTime = (view: CaseView, stageId: string) =>
    two.rows((tx) => tx.countBy(Occupancy, { labStepId: In(stepsOf(view, stageId).map(({ id }) => id)) }));

  it('leave our benches, carry the work and no identity, and wait for an answer', async () => {
    const { view, stageId } = await aSignedCase(two);
    expect(await ownTime(view, stageId)).toBeGreaterThan(0);
    const order = await sent(two, partner, stageId);
    const next = view.stages.find(({ code }) => code === stepsOf(view, stageId)[0]?.beforeStage);
    expect(order).toMatchObject({ state: 'ordered', caseId: view.id, laboratoryName: 'Benchwork Example' });
    expect(order.neededBy).toBe(next?.startsAt);
    expect(await ownTime(view, stageId)).toBe(0);
    expect(statesOf(await caseNow(view), stageId)).toEqual(['paused']);

    const { orderedFrom } = await two.clinician.get('GET /practice', practiceView);
    expect(orderedFrom).toContainEqual({ id: partner.listedAs, name: 'Benchwork Example' });
    const ofStage = (id: string) => two.clinician.get(`GET /lab-orders?stageId=${id}`, labOrderPage);
    expect((await ofStage(stageId)).items.map(({ id }) => id)).toEqual([order.id]);
    expect((await ofStage(found(next).id)).items).toEqual([]);

    const seen = await partner.bench.ask(`GET /lab-orders/${order.id}`);
    const there = labOrderView.parse(seen.body);
    expect(there).toMatchObject({ caseNumber: view.number, caseId: null, laboratoryName: null });
    expect(there.order.steps.map(({ code }) => code)).toEqual(stepsOf(view, stageId).map(({ code }) => code));
    expect(there.order.prescription.shade).toBe('A2');
    expect(there.values).toEqual([{ name: 'Tooth shade', value: 'A2' }]);
    for (const secret of ['Mole', 'Ada', '1944-05-01', view.patient.id, view.id])
      expect(JSON.stringify(seen.body)).not.toContain(secret);
  }, 60_000);

  it('are accepted with a date, which becomes the date of the work in the case, at benches that are counted once', async () => {
    const { view, stageId } = await aSignedCase(two);
    const order = await sent(two, partner, stageId);
    const bench = { placeId: partner.placeId, startsAt: '2027-01-05T09:00:00Z', endsAt: '2027-01-05T11:00:00Z' };
    const accept = { action: 'accept', promisedAt: order.neededBy, benchTimes: [bench] };
    expect((await act(two.desk, order, accept)).status).toBe(403);
    const accepted = await answered(partner.bench, order, accept);
    expect(accepted).toMatchObject({ state: 'accepted', promisedAt: order.neededBy });
    await settle();
    await settle();
    const known = await caseNow(view);
    expect(new Set(stepsOf(known, stageId).map(({ state, endsAt }) => `${state} ${String(endsAt)}`))).toEqual(
      new Set([`started ${order.neededBy}`]),
    );
    expect(known.events.filter(({ kind }) => kind === 'lab-order-accepted')).toHaveLength(1);
    expect(await noticesOf(view, 'lab-order-late')).toBe(0);

    const second = await aSignedCase(two);
    const other = await sent(two, partner, second.stageId);
    const taken = await act(partner.bench, other, accept);
    expect(problem.parse(taken.body)).toMatchObject({ status: 422, code: 'records.occupied' });
    expect((await partner.bench.get(`GET /lab-orders/${other.id}`, labOrderView)).state).toBe('ordered');
    const laboratoryId = (await partner.rows((tx) => tx.find(Laboratory)))[0]?.id ?? '';
    const load = await partner.bench.get(`GET /lab/load?laboratoryId=${laboratoryId}&from=2027-01-05&days=1`, loadView);
    expect(load.workCentres).toMatchObject([{ days: [{ bookedMinutes: 120, openMinutes: 540 }] }]);
    expect(await partner.rows((tx) => tx.countBy(Occupancy, { receivedOrderId: order.id }))).toBe(1);

    await answered(partner.bench, accepted, { action: 'finish' });
    await settle();
    expect(statesOf(await caseNow(view), stageId)).toEqual(['finished']);
  }, 90_000);

  it('that are promised later than needed have the clinic told, and no visit planned before', async () => {
    const { view, stageId } = await aSignedCase(two);
    const order = await sent(two, partner, stageId);
    const late = new Date(Date.parse(order.neededBy) + 10 * 86_400_000).toISOString();
    const accepted = await answered(partner.bench, order, { action: 'accept', promisedAt: late });
    expect(accepted.sentence).toContain('later than needed');
    await settle();
    expect(await noticesOf(view, 'lab-order-late')).toBe(1);
    const known = await caseNow(view);
    const paused = await two.desk.get(`PUT /cases/${view.id}/state`, caseView, {
      version: known.version,
      body: { to: 'paused', reason: 'The work comes later' },
    });
    expect(statesOf(paused, stageId)).toEqual(['started']);
    const back = { version: paused.version, body: { to: 'open', reason: 'Goes on' } };
    await two.desk.get(`PUT /cases/${view.id}/state`, caseView, back);
    const { offers } = await two.desk.get(`POST /cases/${view.id}/offers`, offersView, { body: { count: 1 } });
    const next = stepsOf(known, stageId)[0]?.beforeStage;
    const visit = offers[0]?.plan.visits.find(({ stages }) => stages.includes(next ?? ''));
    expect(Date.parse(visit?.startsAt ?? '')).toBeGreaterThanOrEqual(Date.parse(late));
  }, 90_000);

  it('are declined with a reason: the work waits to be planned again and the clinic is told', async () => {
    const { view, stageId } = await aSignedCase(two);
    const order = await sent(two, partner, stageId);
    expect((await act(partner.bench, order, { action: 'decline' })).status).toBe(400);
    const declined = await answered(partner.bench, order, { action: 'decline', reason: 'No wax bench free' });
    expect(declined.sentence).toBe('Declined: No wax bench free');
    expect((await act(partner.bench, declined, { action: 'accept', promisedAt: PROMISED })).status).toBe(409);
    await settle();
    const known = await caseNow(view);
    expect(statesOf(known, stageId)).toEqual(['unplanned']);
    expect(known.events.at(-1)?.sentence).toContain('declined the order: No wax bench free');
    expect(await noticesOf(view, 'lab-order-declined')).toBe(1);
    const again = await sent(two, partner, stageId);
    expect(again.state).toBe('ordered');
  }, 60_000);

  it('are withdrawn by the practice, and the laboratory frees its bench', async () => {
    const { view, stageId } = await aSignedCase(two);
    const order = await sent(two, partner, stageId);
    const bench = { placeId: partner.placeId, startsAt: '2027-01-06T09:00:00Z', endsAt: '2027-01-06T10:00:00Z' };
    const accepted = await answered(partner.bench, order, {
      action: 'accept',
      promisedAt: PROMISED,
      benchTimes: [bench],
    });
    const withdraw = { action: 'withdraw', reason: 'Another way was found' };
    expect((await act(partner.bench, accepted, withdraw)).status).toBe(403);
    expect((await act(two.desk, order, withdraw)).status).toBe(412);
    expect((await two.desk.ask(`POST /lab-orders/${order.id}/actions`, { body: withdraw })).status).toBe(428);
    const withdrawn = await answered(two.desk, accepted, withdraw);
    expect(withdrawn.state).toBe('withdrawn');
    expect(statesOf(await caseNow(view), stageId)).toEqual(['unplanned']);
    expect((await act(partner.bench, withdrawn, { action: 'finish' })).status).toBe(409);
    await partner.sweepAt(NOW);
    expect(await partner.rows((tx) => tx.countBy(Occupancy, { receivedOrderId: order.id }))).toBe(0);
  }, 60_000);

  it('are withdrawn by themselves when the case stops altogether', async () => {
    const { view, stageId } = await aSignedCase(two);
    const order = await sent(two, partner, stageId);
    const { version } = await caseNow(view);
    const body = { to: 'abandoned', reason: 'Wants no denture' };
    await two.desk.get(`PUT /cases/${view.id}/state`, caseView, { version, body });
    await settle();
    expect((await partner.bench.get(`GET /lab-orders/${order.id}`, labOrderView)).state).toBe('withdrawn');
  }, 60_000);

  it('want a signed work order, a laboratory that takes orders, work not begun, a date to come and a key', async () => {
    const { view, stageId } = await aSignedCase(two);
    const send = (over: Record<string, unknown>, key?: string | null) =>
      two.clinician.ask('POST /lab-orders', {
        body: { stageId, laboratoryId: partner.listedAs, ...over },
        ...(key === undefined ? {} : { key }),
      });
    const own = (await two.rows((tx) => tx.find(Laboratory))).find((each) => each.partnerOrganisationId === null);
    expect(problem.parse((await send({ laboratoryId: own?.id })).body)).toMatchObject({
      status: 400,
      errors: [{ path: 'laboratoryId' }],
    });
    const unsigned = view.stages.find(({ id }) => id !== stageId)?.id;
    expect(problem.parse((await send({ stageId: unsigned })).body).detail).toContain('not signed');
    expect((await send({ neededBy: '2027-01-04T06:00:00Z' })).status).toBe(400);
    expect((await send({}, null)).status).toBe(400);
    expect((await two.bench.ask('POST /lab-orders', { body: {} })).status).toBe(403);
    expect(
      (await two.stranger.ask('POST /lab-orders', { body: { stageId, laboratoryId: partner.listedAs } })).status,
    ).toBe(404);
    const first = await send({}, 'one-and-the-same-order');
    expect((await send({}, 'one-and-the-same-order')).body).toEqual(first.body);
    expect(problem.parse((await send({})).body).detail).toContain('work that has not begun');
  }, 60_000);

  describe('the wall between the organisations', () => {
    it('lets neither side read or write the other’s tables, and a third sees nothing', async () => {
      const { view, stageId } = await aSignedCase(two);
      const order = await sent(two, partner, stageId);
      const atLaboratory = await partner.rows(async (tx) => ({
        cases: await tx.count(TreatmentCase),
        patients: await tx.count(Patient),
        clinics: await tx.count(Clinic),
        sent: await tx.count(SentOrder),
        audited: await tx.countBy(AuditEntry, { subjectId: order.id }),
        changed: (await tx.update(TreatmentCase, { id: view.id }, { state: 'closed' })).affected,
      }));
      expect(atLaboratory).toEqual({ cases: 0, patients: 0, clinics: 0, sent: 0, audited: 0, changed: 0 });
      const ofLaboratory = await two.rows((tx) => tx.countBy(Occupancy, { resourceId: partner.placeId }));
      expect(ofLaboratory).toBe(0);
      expect(await third.rows((tx) => tx.count(LabExchange))).toBe(0);
      expect((await third.bench.ask(`GET /lab-orders/${order.id}`)).status).toBe(404);
      expect((await act(third.bench, order, { action: 'accept', promisedAt: PROMISED })).status).toBe(404);
      expect((await two.stranger.ask(`GET /lab-orders/${order.id}`)).status).toBe(404);
      expect((await two.stranger.get('GET /lab-orders', labOrderPage)).items).toEqual([]);
      expect((await two.bench.get('GET /lab-orders', labOrderPage)).items).toEqual([]);
      expect((await partner.bench.ask(`GET /cases/${view.id}`)).status).toBe(404);
    }, 60_000);

    it('lets each party say only what is its own to say, whatever the application does', async () => {
      const { stageId } = await aSignedCase(two);
      const { id } = await sent(two, partner, stageId);
      const write = (party: Pick<Partner, 'rows'>, change: Partial<LabExchange>) =>
        party.rows((tx) => tx.update(LabExchange, { id }, change));
      const answer = { state: 'accepted' as const, promisedAt: new Date(PROMISED) };
      await expect(write(two, answer)).rejects.toThrow('only the laboratory answers');
      await expect(write(partner, { state: 'withdrawn' })).rejects.toThrow('only the practice withdraws');
      await expect(write(partner, { orderDocument: {} })).rejects.toThrow('stays as it was sent');
      await expect(write(two, { neededBy: NOW })).rejects.toThrow('stays as it was sent');
      await expect(write(partner, { state: 'finished', promisedAt: NOW })).rejects.toThrow('only a live order');
      await expect(write(third, answer)).resolves.toMatchObject({ affected: 0 });
      await expect(write(partner, answer)).resolves.toMatchObject({ affected: 1 });
    }, 60_000);
  });
});
