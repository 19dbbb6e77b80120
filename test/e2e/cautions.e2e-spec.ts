import { cautionList, cautionView, problem, stageView } from '@archwright/contracts';
import { AuditEntry } from '@archwright/records';
import { caseOf, openTwoPractices, patientOf, type TwoPractices } from './cases-client.js';

const ALLERGY = { kind: 'material-allergy', material: 'methacrylate', note: 'Blisters in 2019.' };

describe('cautions of a patient over HTTP', () => {
  let two: TwoPractices;
  beforeAll(async () => {
    two = await openTwoPractices();
  }, 60_000);
  afterAll(() => two.close());

  const cautionOf = async (patientId: string, body: unknown = ALLERGY) =>
    two.clinician.get(`POST /patients/${patientId}/cautions`, cautionView, { body });

  it('are recorded once per allergy, with words for the visit, and audited without what they say', async () => {
    const patientId = (await patientOf(two.desk)).id;
    const call = `POST /patients/${patientId}/cautions`;
    const key = 'one-allergy-of-this-patient';
    const first = await two.clinician.ask(call, { body: ALLERGY, key });
    expect(first).toMatchObject({ status: 201, etag: '"1"' });
    expect((await two.clinician.ask(call, { body: ALLERGY, key })).body).toEqual(first.body);
    const caution = cautionView.parse(first.body);
    expect(caution.text).toBe('This patient is allergic to methacrylate: do not use it. Blisters in 2019.');
    expect((await two.clinician.ask(call, { body: ALLERGY })).status).toBe(409);
    const audit = await two.rows((tx) => tx.findBy(AuditEntry, { subjectId: caution.id }));
    expect(JSON.stringify(audit)).toContain('caution-recorded');
    expect(JSON.stringify(audit)).not.toMatch(/methacrylate|Blisters/);
  });

  it('stand before everything else at each visit while they are in force', async () => {
    const opened = await caseOf(two.desk);
    const path = `GET /stages/${opened.stages[0]?.id ?? ''}`;
    const before = (await two.clinician.get(path, stageView)).cautions;
    const { id, text } = await cautionOf(opened.patient.id);
    expect((await two.clinician.get(path, stageView)).cautions).toEqual([
      { code: 'patient-material-allergy', text },
      ...before,
    ]);
    const body = { reason: 'A mix-up of two patients.' };
    await two.clinician.get(`PUT /cautions/${id}/end`, cautionView, { body, version: 1 });
    expect((await two.clinician.get(path, stageView)).cautions).toEqual(before);
  });

  it('name the material of an allergy, and say what else is meant', async () => {
    const patientId = (await patientOf(two.desk)).id;
    for (const body of [{ kind: 'material-allergy' }, { kind: 'other' }, { kind: 'swallowing', material: 'latex' }]) {
      const refused = await two.clinician.ask(`POST /patients/${patientId}/cautions`, { body });
      expect([body, refused.status]).toEqual([body, 400]);
      expect(problem.parse(refused.body).errors).not.toEqual([]);
    }
  });

  it('are ended with a reason and stay on record', async () => {
    const patientId = (await patientOf(two.desk)).id;
    const { id } = await cautionOf(patientId);
    await cautionOf(patientId, { kind: 'swallowing' });
    const end = (body: unknown, version?: number) =>
      two.clinician.ask(`PUT /cautions/${id}/end`, { body, ...(version === undefined ? {} : { version }) });
    const reason = 'Tested: no reaction.';
    expect((await end({ reason })).status).toBe(428);
    expect((await end({ reason }, 2)).status).toBe(412);
    expect((await end({}, 1)).status).toBe(400);
    expect(await end({ reason }, 1)).toMatchObject({ status: 200, etag: '"2"', body: { endReason: reason } });
    expect((await end({ reason }, 2)).status).toBe(409);
    const { items } = await two.clinician.get(`GET /patients/${patientId}/cautions`, cautionList);
    expect(items.map(({ kind, endedAt }) => [kind, endedAt === null])).toEqual([
      ['swallowing', true],
      ['material-allergy', false],
    ]);
    await cautionOf(patientId);
  });

  it('are for those who treat: neither the desk nor the laboratory nor another practice sees them', async () => {
    const patientId = (await patientOf(two.desk)).id;
    await cautionOf(patientId);
    for (const person of [two.desk, two.bench, two.stranger]) {
      expect((await person.ask(`GET /patients/${patientId}/cautions`)).status).toBe(403);
    }
    expect(JSON.stringify((await two.desk.ask(`GET /patients/${patientId}`)).body)).not.toContain('methacrylate');
  });
});
