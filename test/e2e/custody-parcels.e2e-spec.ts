import { caseView, parcelPage, parcelView, problem, type ParcelView } from '@archwright/contracts';
import { Notice } from '@archwright/records';
import { openTwoPractices, type Answer, type TwoPractices } from './cases-client.js';
import {
  aTrackedCase,
  acted,
  carried,
  disinfected,
  label,
  objectNow,
  packBody,
  packed,
  reconcile,
  registered,
  type TrackedCase,
} from './custody-parcels.js';

const NOW = '2027-01-04T07:00:00Z';

describe('parcels', () => {
  let two: TwoPractices;
  let treated: TrackedCase;
  beforeAll(async () => {
    two = await openTwoPractices();
    treated = await aTrackedCase(two);
  }, 90_000);
  afterAll(() => two.close());

  const aReadyObject = async (over: Record<string, unknown> = {}) =>
    disinfected(two.desk, await registered(two.desk, treated, over));
  const isThere = (answer: Answer): ParcelView => parcelView.parse(answer.body);
  const noticesTo = async (recipient: Notice['recipient']) =>
    two.rows((tx) => tx.countBy(Notice, { caseId: treated.caseId, kind: 'parcel-mismatch', recipient }));

  it('carry objects to the laboratory and back, and each way needs a declaration of its own', async () => {
    const impression = await aReadyObject();
    const parcel = await packed(two.desk, treated, [impression]);
    expect(parcel.sentence).toMatch(/^1 object packed at/);
    expect(parcel.objects).toMatchObject([{ code: impression.code, found: null }]);
    expect(parcel.objects[0]?.declared).toContain('Aldehyde, immersion');
    expect((await objectNow(two.desk, impression)).state).toBe('packed');
    const onItsWay = await acted(two.desk, parcel, { action: 'hand-over', carrier: 'Noon run' });
    expect(await objectNow(two.desk, impression)).toMatchObject({ state: 'in-transit', holder: 'courier' });
    const received = await acted(two.bench, onItsWay, { action: 'receive' });
    const done = isThere(
      await reconcile(two.bench, received, [{ ...label(impression), found: 'present', place: 'B4' }]),
    );
    expect(done).toMatchObject({ state: 'reconciled', objects: [{ found: 'present' }] });
    expect(done.sentence).toContain('arrived complete');
    const there = await objectNow(two.bench, impression);
    expect(there).toMatchObject({ state: 'in-use', holder: 'laboratory', place: 'B4', disinfection: null });

    const undeclared = await two.bench.ask('POST /parcels', { body: packBody(treated, [there], 'to-clinic') });
    expect(problem.parse(undeclared.body)).toMatchObject({ status: 409 });
    expect(problem.parse(undeclared.body).detail).toContain('No disinfection');
    const early = { agent: 'Aldehyde', method: 'spray', at: '2027-01-04T06:59:00Z' };
    const before = await two.bench.ask(`POST /objects/${there.id}/disinfections`, { body: early });
    expect(problem.parse(before.body).errors?.[0]?.accepted).toContain('when it came here');
    await disinfected(two.bench, there, received.receivedAt ?? NOW);
    const back = await carried(two.bench, two.desk, await packed(two.bench, treated, [there], 'to-clinic'));
    await reconcile(two.desk, back, [{ ...label(there), found: 'present' }]);
    expect(await objectNow(two.desk, there)).toMatchObject({ holder: 'clinic', clinicId: treated.clinicId });
  });

  it('refuse what is undeclared, past its use-by, a file, quarantined, or in another parcel', async () => {
    const bare = await registered(two.desk, treated);
    const old = await aReadyObject({ useBy: NOW });
    const file = await aReadyObject({ kind: 'scan-file', arch: null });
    const ready = await aReadyObject();
    const once = await packed(two.desk, treated, [ready]);
    for (const [object, why] of [
      [bare, 'No disinfection'],
      [old, 'use-by passed'],
      [file, 'file'],
      [ready, 'It is packed'],
    ] as const) {
      const refused = await two.desk.ask('POST /parcels', { body: packBody(treated, [object]) });
      expect(refused.status).toBe(409);
      expect(problem.parse(refused.body).detail).toContain(why);
    }
    expect((await two.desk.get(`GET /parcels/${once.id}`, parcelView)).objects).toHaveLength(1);
  });

  it('want both names of each object, and the sender where the object is', async () => {
    const object = await aReadyObject();
    const body = packBody(treated, [object]);
    const swapped = { ...body, objects: [{ caseNumber: '27-9999', code: object.code }] };
    const refused = await two.desk.ask('POST /parcels', { body: swapped });
    expect(problem.parse(refused.body)).toMatchObject({ status: 400, errors: [{ path: 'objects.0' }] });
    expect(problem.parse(refused.body).detail).toContain('does not belong to case 27-9999');
    const twice = { ...body, objects: [label(object), label(object)] };
    expect(problem.parse((await two.desk.ask('POST /parcels', { body: twice })).body).detail).toContain('named twice');
    expect((await two.bench.ask('POST /parcels', { body })).status).toBe(403);
    const fromLab = { ...body, direction: 'to-clinic' };
    expect(problem.parse((await two.bench.ask('POST /parcels', { body: fromLab })).body).detail).toContain(
      'is with the clinic',
    );
    expect((await two.desk.ask('POST /parcels', { body, key: null })).status).toBe(400);
  });

  it('lose an object again before they leave, and do not leave empty', async () => {
    const object = await aReadyObject();
    const parcel = await packed(two.desk, treated, [object]);
    const emptied = await acted(two.desk, parcel, { action: 'take-out', objectId: object.id });
    expect((await objectNow(two.desk, object)).state).toBe('in-use');
    const handOver = { version: emptied.version, body: { action: 'hand-over', carrier: 'Noon run' } };
    const refused = await two.desk.ask(`POST /parcels/${parcel.id}/actions`, handOver);
    expect(problem.parse(refused.body).detail).toContain('empty');
    const stale = await two.desk.ask(`POST /parcels/${parcel.id}/actions`, { ...handOver, version: parcel.version });
    expect(stale.status).toBe(412);
  });

  it('are handed over by the sender and received by the receiver only; another organisation knows nothing', async () => {
    const parcel = await packed(two.desk, treated, [await aReadyObject()]);
    const act = (person: typeof two.desk, version: number, body: Record<string, unknown>) =>
      person.ask(`POST /parcels/${parcel.id}/actions`, { version, body });
    const handOver = { action: 'hand-over', carrier: 'Noon run' };
    expect((await act(two.bench, parcel.version, handOver)).status).toBe(403);
    expect((await act(two.desk, parcel.version, { action: 'receive' })).status).toBe(403);
    const onItsWay = isThere(await act(two.desk, parcel.version, handOver));
    expect((await act(two.desk, onItsWay.version, { action: 'receive' })).status).toBe(403);
    expect((await act(two.stranger, onItsWay.version, { action: 'receive' })).status).toBe(404);
    expect((await two.stranger.ask(`GET /parcels/${parcel.id}`)).status).toBe(404);
    expect((await two.stranger.get('GET /parcels', parcelPage)).items).toEqual([]);
    const atOther = await two.deskAt('0190f5a0-0000-7000-8000-000000000000');
    expect((await atOther.ask(`GET /parcels/${parcel.id}`)).status).toBe(404);
  });

  it('quarantine what is missing, damaged, undeclared or unexpected, and tell the sender once a case', async () => {
    const [here, gone, torn, dirty] = [
      await aReadyObject(),
      await aReadyObject(),
      await aReadyObject(),
      await aReadyObject(),
    ];
    const stowaway = await registered(two.desk, treated, { kind: 'rim' });
    const sent = await packed(two.desk, treated, [here, gone, torn, dirty]);
    const arrived = await carried(two.desk, two.bench, sent);
    const before = await noticesTo('clinic');
    const forgotten = await reconcile(two.bench, arrived, [{ ...label(here), found: 'present' }]);
    expect(problem.parse(forgotten.body).detail).toContain(gone.code);
    const findings = [
      { ...label(here), found: 'present' },
      { ...label(gone), found: 'missing' },
      { ...label(torn), found: 'damaged', note: 'Torn at the border' },
      { ...label(dirty), found: 'undeclared' },
      { ...label(stowaway), found: 'present' },
    ];
    const impossible = [...findings.slice(0, 4), { ...label(stowaway), found: 'missing' }];
    expect((await reconcile(two.bench, arrived, impossible)).status).toBe(400);
    expect((await reconcile(two.desk, arrived, findings)).status).toBe(403);
    const done = isThere(await reconcile(two.bench, arrived, findings));
    expect(done.sentence).toContain('4 of 5 objects amiss');
    const states = await Promise.all(
      [here, gone, torn, dirty, stowaway].map(async (object) => {
        const { state, holder, stateReason } = await objectNow(two.bench, object);
        return [state, holder, stateReason];
      }),
    );
    expect(states).toEqual([
      ['in-use', 'laboratory', null],
      ['quarantined', 'courier', 'Missing from its parcel'],
      ['quarantined', 'laboratory', 'Damaged on arrival: Torn at the border'],
      ['quarantined', 'laboratory', 'Arrived without its declaration of disinfection'],
      ['quarantined', 'laboratory', 'In a parcel that did not announce it'],
    ]);
    expect((await noticesTo('clinic')) - before).toBe(1);
    const { events } = await two.desk.get(`GET /cases/${treated.caseId}`, caseView);
    expect(events.findLast(({ kind }) => kind === 'parcel-mismatch')?.sentence).toContain(`${gone.code} missing`);
    expect((await reconcile(two.bench, done, findings)).status).toBe(409);
  });
});
