import { caseView, objectPage, objectView, problem, type ObjectView } from '@archwright/contracts';
import { AuditEntry, DisinfectionRecord } from '@archwright/records';
import { Person, openTwoPractices, type Answer, type TwoPractices } from './cases-client.js';
import { aTrackedCase, disinfected, objectNow, registered, type TrackedCase } from './custody-parcels.js';

const MINUTE_AGO = '2027-01-04T06:59:00Z';

describe('objects that change hands', () => {
  let two: TwoPractices;
  let treated: TrackedCase;
  beforeAll(async () => {
    two = await openTwoPractices();
    treated = await aTrackedCase(two);
  }, 90_000);
  afterAll(() => two.close());

  const act = ({ id, version }: ObjectView, body: Record<string, unknown>, person = two.desk): Promise<Answer> =>
    person.ask(`POST /objects/${id}/actions`, { version, body });
  const acted = async (object: ObjectView, body: Record<string, unknown>, person = two.desk): Promise<ObjectView> =>
    objectView.parse((await act(object, body, person)).body);

  it('are registered under a code of ours, once per thing, and told in the history of the case', async () => {
    const first = await registered(two.desk, treated, { place: 'Shelf 2' });
    const second = await registered(two.desk, treated);
    expect(first).toMatchObject({ code: `${treated.number}-impression-upper-1`, state: 'in-use', place: 'Shelf 2' });
    expect(second.code).toBe(`${first.code}-2`);
    const { events } = await two.desk.get(`GET /cases/${treated.caseId}`, caseView);
    expect(events.at(-1)?.sentence).toBe(`Object ${second.code} is kept from now on.`);
    const audited = await two.rows((tx) => tx.findBy(AuditEntry, { subjectId: first.id }));
    expect(audited).toMatchObject([{ action: 'register-object', subjectKind: 'custody-object' }]);
  });

  it('are registered once when the call is repeated, and only where the person works', async () => {
    const body = { caseId: treated.caseId, kind: 'old-denture', arch: 'lower', clinicId: treated.clinicId };
    const key = 'one-old-denture';
    const first = await two.desk.ask('POST /objects', { body, key });
    expect((await two.desk.ask('POST /objects', { body, key })).body).toEqual(first.body);
    expect((await two.desk.ask('POST /objects', { body, key: null })).status).toBe(400);
    const elsewhere = { ...body, clinicId: undefined, laboratoryId: treated.laboratoryId };
    expect((await two.desk.ask('POST /objects', { body: elsewhere })).status).toBe(400);
    expect((await two.bench.ask('POST /objects', { body: elsewhere })).status).toBe(201);
    const admin = new Person(two.api.url, await two.api.signIn('admin'));
    const nowhere = { ...body, clinicId: '01900000-0000-7000-8000-000000000000' };
    expect((await admin.ask('POST /objects', { body: nowhere })).status).toBe(400);
    expect((await admin.ask('POST /objects', { body })).status).toBe(201);
  });

  it('are unknown to another organisation and to another clinic', async () => {
    const object = await registered(two.desk, treated);
    expect((await two.stranger.ask(`GET /objects/${object.id}`)).status).toBe(404);
    expect((await act(object, { action: 'move', place: 'Mine' }, two.stranger)).status).toBe(404);
    const { items } = await two.stranger.get('GET /objects', objectPage);
    expect(items).toEqual([]);
  });

  it('are changed only by those who have them, and only as last seen', async () => {
    const object = await registered(two.desk, treated);
    expect((await act(object, { action: 'move', place: 'Bench' }, two.bench)).status).toBe(403);
    const moved = await acted(object, { action: 'move', place: 'Shelf 3' });
    expect(moved.place).toBe('Shelf 3');
    expect((await act(object, { action: 'move', place: 'Shelf 4' })).status).toBe(412);
    const blind = await two.desk.ask(`POST /objects/${object.id}/actions`, { body: { action: 'move', place: 'x' } });
    expect(blind.status).toBe(428);
  });

  it('leave quarantine only with a reason, and cannot be used meanwhile', async () => {
    const object = await registered(two.desk, treated);
    expect((await act(object, { action: 'quarantine' })).status).toBe(400);
    const aside = await acted(object, { action: 'quarantine', reason: 'Blood is visible' });
    expect(aside).toMatchObject({ state: 'quarantined', stateReason: 'Blood is visible' });
    expect(aside.notToBeUsed).toContain('Blood is visible');
    const used = await act(aside, { action: 'give-to-patient' });
    expect(problem.parse(used.body)).toMatchObject({ status: 422, code: 'protocol.illegal-transition' });
    const waiting = await two.desk.get('GET /objects?state=quarantined', objectPage);
    expect(waiting.items.map(({ id }) => id)).toContain(aside.id);
    const released = await acted(aside, { action: 'release', reason: 'Rinsed and looked at' });
    expect(released).toMatchObject({ state: 'in-use', stateReason: null, notToBeUsed: null });
  });

  it('are refused once their use-by has passed', async () => {
    const old = await registered(two.desk, treated, { kind: 'denture', useBy: MINUTE_AGO });
    expect(old.notToBeUsed).toContain('use-by passed');
    const given = await act(old, { action: 'give-to-patient' });
    expect(problem.parse(given.body)).toMatchObject({ status: 409, code: 'casework.state-conflict' });
    const aside = await acted(old, { action: 'quarantine', reason: 'Too old' });
    expect((await act(aside, { action: 'release', reason: 'Looks fine' })).status).toBe(409);
    const useBy = '2027-02-01T00:00:00Z';
    const corrected = await acted(aside, { action: 'set-use-by', useBy, reason: 'Mistyped' });
    const released = await acted(corrected, { action: 'release', reason: 'The date was mistyped' });
    expect((await acted(released, { action: 'give-to-patient' })).holder).toBe('patient');
  });

  it('go to the patient and come back, and are looked at again after they were lost', async () => {
    const object = await registered(two.desk, treated, { kind: 'old-denture' });
    const given = await acted(object, { action: 'give-to-patient' });
    const back = await acted(given, { action: 'take-back', place: 'Tray 1' });
    expect(back).toMatchObject({ state: 'in-use', holder: 'clinic', clinicId: treated.clinicId, place: 'Tray 1' });
    const lost = await acted(back, { action: 'declare-lost', reason: 'Not on its tray' });
    expect(lost).toMatchObject({ state: 'lost', holder: 'nobody' });
    const found = await acted(lost, { action: 'find', reason: 'In the other surgery' });
    expect(found).toMatchObject({ state: 'quarantined', holder: 'clinic', clinicId: treated.clinicId });
    const gone = await acted(found, { action: 'discard', reason: 'Broken' });
    expect(problem.parse((await act(gone, { action: 'find', reason: 'x' })).body).detail).toContain('final');
  });

  describe('a declaration of disinfection', () => {
    it('names who, with what, how and when, and says that it proves nothing', async () => {
      const object = await registered(two.clinician, treated);
      expect(object.notToBePacked).toContain('No disinfection');
      const declared = await disinfected(two.clinician, object);
      expect(declared.notToBePacked).toBeNull();
      expect(declared.disinfection).toMatchObject({
        agent: 'Aldehyde',
        method: 'immersion',
        at: '2027-01-04T06:50:00.000Z',
      });
      expect(declared.disinfection?.by).not.toBe('');
      expect(declared.caution.text).toMatch(/not a proof.*infection-control rules decide/);
      const [record] = await two.rows((tx) => tx.findBy(DisinfectionRecord, { objectId: object.id }));
      expect(record?.stageId).toBeNull();
    });

    it('is refused for a time to come and by those who do not have the object', async () => {
      const object = await registered(two.desk, treated);
      const body = { agent: 'Aldehyde', method: 'spray', at: '2027-01-04T12:00:00Z' };
      const ahead = await two.desk.ask(`POST /objects/${object.id}/disinfections`, { body });
      expect(problem.parse(ahead.body)).toMatchObject({ status: 400, errors: [{ path: 'at' }] });
      const past = { ...body, at: '2027-01-04T06:00:00Z' };
      expect((await two.bench.ask(`POST /objects/${object.id}/disinfections`, { body: past })).status).toBe(403);
      expect((await objectNow(two.desk, object)).disinfection).toBeNull();
    });
  });
});
