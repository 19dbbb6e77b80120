import {
  caseView,
  objectView,
  offersView,
  practiceView,
  problem,
  transferPage,
  transferView,
  type CaseView,
  type ObjectView,
  type TransferView,
} from '@archwright/contracts';
import { LabStep, Notice, Reminder } from '@archwright/records';
import { In } from 'typeorm';
import { booked, caseBody, openTwoPractices, patientOf, type Person, type TwoPractices } from './cases-client.js';
import { disinfected } from './custody-parcels.js';

describe('the transfer of a case to another clinic', () => {
  let two: TwoPractices;
  let north = '';
  let east = '';
  let atNorth: Person;
  let atEast: Person;
  beforeAll(async () => {
    two = await openTwoPractices();
    const { clinics } = await two.desk.get('GET /practice', practiceView);
    [north = '', east = ''] = clinics.map(({ id }) => id);
    atNorth = await two.deskAt(north);
    atEast = await two.deskAt(east);
  }, 60_000);
  afterAll(() => two.close());

  /** A booked case of the first clinic whose first laboratory step has begun, and something of it on the shelf. */
  const aBusyCase = async (): Promise<CaseView> => {
    const patientId = (await patientOf(two.desk, { mail: 'ada@example.test', reminderConsent: ['mail'] })).id;
    const body = await caseBody(two.desk, { patientId, clinicIds: [north] });
    const view = await booked(two.desk, (await two.desk.get('POST /cases', caseView, { body })).id);
    const [step] = view.labSteps;
    await two.rows((tx) => tx.update(LabStep, { id: step?.id ?? '' }, { state: 'started', startedAt: new Date() }));
    return view;
  };
  const anObject = ({ id }: CaseView): Promise<ObjectView> => {
    const body = { caseId: id, kind: 'old-denture', arch: 'lower', clinicId: north };
    return atNorth.get('POST /objects', objectView, { body });
  };
  const propose = async (view: CaseView, to: Record<string, unknown> = { clinicId: east }): Promise<TransferView> => {
    const body = { to: 'transferred', reason: 'Moves house', ...to };
    const handed = await atNorth.get(`PUT /cases/${view.id}/state`, caseView, { version: view.version, body });
    expect(handed.state).toBe('transferred');
    const { items } = await atNorth.get('GET /transfers?state=proposed', transferPage);
    const transfer = items.find(({ caseId }) => caseId === view.id);
    if (transfer === undefined) throw new Error('The transfer is not listed.');
    return transfer;
  };
  const ask = (person: Person, { id, version }: TransferView, decision: string, reason = 'Agreed by telephone') =>
    person.ask(`POST /transfers/${id}/decision`, { version, body: { decision, reason } });
  const decided = async (person: Person, transfer: TransferView, decision: string): Promise<TransferView> =>
    transferView.parse((await ask(person, transfer, decision)).body);
  const told = (view: CaseView, kind: string, clinicId: string) =>
    two.rows((tx) => tx.countBy(Notice, { caseId: view.id, kind, recipient: 'clinic', clinicId }));

  it('cancels what is booked, lets begun work finish, lists what goes along, and tells the other clinic', async () => {
    const view = await aBusyCase();
    const object = await anObject(view);
    const appointmentIds = view.stages.flatMap(({ appointmentId }) => appointmentId ?? []);
    const transfer = await propose(view);
    expect(transfer).toMatchObject({ fromClinicId: north, toClinicId: east, reason: 'Moves house', visitsToCome: 0 });
    expect(transfer.sentence).toContain('waits for an answer');
    expect(transfer.labWork).toMatchObject([{ code: view.labSteps[0]?.code, state: 'started' }]);
    expect(transfer.objects).toMatchObject([{ code: object.code, holder: 'clinic', clinicId: north }]);
    const reminders = await two.rows((tx) =>
      tx.countBy(Reminder, { appointmentId: In(appointmentIds), state: 'scheduled' }),
    );
    expect(reminders).toBe(0);
    expect(await told(view, 'transfer-proposed', east)).toBe(1);
    const incoming = await atEast.get('GET /transfers?direction=incoming&state=proposed', transferPage);
    expect(incoming.items.map(({ id }) => id)).toContain(transfer.id);
    expect((await atEast.get('GET /transfers?direction=outgoing', transferPage)).items).toEqual([]);
  }, 60_000);

  it('is accepted by the other clinic, where the case goes on and is planned anew', async () => {
    const view = await aBusyCase();
    const transfer = await propose(view);
    expect((await ask(atNorth, transfer, 'accept')).status).toBe(403);
    const accepted = await decided(atEast, transfer, 'accept');
    expect(accepted).toMatchObject({ state: 'accepted', decisionReason: 'Agreed by telephone' });
    expect(await told(view, 'transfer-accepted', north)).toBe(1);
    const there = await atEast.get(`GET /cases/${view.id}`, caseView);
    expect(there).toMatchObject({ state: 'open', clinicIds: [east], consentOn: null });
    expect(there.labSteps.filter(({ state }) => state === 'started')).toHaveLength(1);
    expect((await atNorth.ask(`GET /cases/${view.id}`)).status).toBe(404);
    const { offers } = await atEast.get(`POST /cases/${view.id}/offers`, offersView, { body: { count: 1 } });
    expect(new Set(offers[0]?.plan.visits.map(({ clinicId }) => clinicId))).toEqual(new Set([east]));
  }, 90_000);

  it('has its objects forwarded by hand, declared disinfected, and booked in where they arrive', async () => {
    const view = await aBusyCase();
    const object = await anObject(view);
    const accepted = await decided(atEast, await propose(view), 'accept');
    expect(accepted.sentence).toContain('1 object is still to be forwarded');
    const act = (person: Person, { id, version }: ObjectView, body: Record<string, unknown>) =>
      person.ask(`POST /objects/${id}/actions`, { version, body });
    expect((await act(atEast, object, { action: 'forward', clinicId: east })).status).toBe(403);
    expect((await act(atNorth, object, { action: 'forward', clinicId: east })).status).toBe(409);
    const declared = await disinfected(atNorth, object);
    expect((await act(atNorth, declared, { action: 'forward', clinicId: north })).status).toBe(400);
    const gone = objectView.parse((await act(atNorth, declared, { action: 'forward', clinicId: east })).body);
    expect(gone).toMatchObject({ state: 'expected', holder: 'courier', clinicId: east });
    expect((await atNorth.ask(`GET /objects/${gone.id}`)).status).toBe(404);
    const arrived = objectView.parse((await act(atEast, gone, { action: 'book-in', place: 'Tray 7' })).body);
    expect(arrived).toMatchObject({ state: 'in-use', holder: 'clinic', clinicId: east, disinfection: null });
    expect((await atEast.get(`GET /transfers/${accepted.id}`, transferView)).sentence).toMatch(/: accepted\.$/);
  }, 60_000);

  it('is declined with a reason, and the case goes on where it was, out of the other clinic’s sight', async () => {
    const view = await aBusyCase();
    const transfer = await propose(view);
    const blank = await atEast.ask(`POST /transfers/${transfer.id}/decision`, {
      version: transfer.version,
      body: { decision: 'decline', reason: ' ' },
    });
    expect(blank.status).toBe(400);
    const declined = await decided(atEast, transfer, 'decline');
    expect(declined.sentence).toContain('declined; the case goes on where it was');
    expect((await atEast.ask(`GET /cases/${view.id}`)).status).toBe(404);
    const back = await atNorth.get(`GET /cases/${view.id}`, caseView);
    expect(back).toMatchObject({ state: 'open', clinicIds: [north] });
    expect(back.events.map(({ kind }) => kind)).toContain('transfer-declined');
    expect(problem.parse((await ask(atEast, declined, 'accept')).body).status).toBe(409);
  }, 60_000);

  it('is withdrawn by those who proposed it, on what they last saw', async () => {
    const view = await aBusyCase();
    const transfer = await propose(view);
    expect((await ask(atEast, transfer, 'withdraw')).status).toBe(403);
    expect((await ask(atNorth, { ...transfer, version: 9 }, 'withdraw')).status).toBe(412);
    const blind = { body: { decision: 'withdraw', reason: 'Stays' } };
    expect((await atNorth.ask(`POST /transfers/${transfer.id}/decision`, blind)).status).toBe(428);
    expect((await decided(atNorth, transfer, 'withdraw')).state).toBe('withdrawn');
    expect(await told(view, 'transfer-withdrawn', east)).toBe(1);
  }, 60_000);

  it('to a practice outside is noted by the clinic that asked, and the case stays handed over', async () => {
    const view = await aBusyCase();
    const transfer = await propose(view, { outsidePractice: 'A practice in Cork' });
    expect(transfer).toMatchObject({ toClinicId: null, toName: 'A practice in Cork' });
    expect((await atEast.ask(`GET /transfers/${transfer.id}`)).status).toBe(404);
    expect((await decided(atNorth, transfer, 'accept')).state).toBe('accepted');
    expect((await atNorth.get(`GET /cases/${view.id}`, caseView)).state).toBe('transferred');
  }, 60_000);

  it('is unknown to another organisation and no business of a laboratory', async () => {
    const transfer = await propose(await aBusyCase());
    expect((await two.stranger.ask(`GET /transfers/${transfer.id}`)).status).toBe(404);
    expect((await ask(two.stranger, transfer, 'accept')).status).toBe(404);
    expect((await two.stranger.get('GET /transfers', transferPage)).items).toEqual([]);
    expect((await two.bench.ask('GET /transfers')).status).toBe(403);
  }, 60_000);
});
