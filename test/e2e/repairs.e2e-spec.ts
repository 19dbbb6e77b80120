import { aftercareView, caseView, type CaseView } from '@archwright/contracts';
import { Stage } from '@archwright/records';
import { caseBody, openTwoPractices, patientOf, type TwoPractices } from './cases-client.js';

describe('repairs over HTTP', () => {
  let two: TwoPractices;
  beforeAll(async () => {
    two = await openTwoPractices();
  }, 60_000);
  afterAll(() => two.close());

  const open = async (patientId: string, over: Record<string, unknown> = {}, code?: string) =>
    two.desk.ask('POST /cases', { body: await caseBody(two.desk, { patientId, ...over }, code) });
  const opened = async (patientId: string, over: Record<string, unknown> = {}, code?: string): Promise<CaseView> => {
    const { status, body } = await open(patientId, over, code);
    expect([status, body]).toEqual([201, expect.anything()]);
    return caseView.parse(body);
  };
  /** As if the dentures had been placed. */
  const place = (caseId: string, code: string) =>
    two.rows((tx) => tx.update(Stage, { caseId, code }, { state: 'passed' }));

  it('follow the case that placed the denture, and both say so', async () => {
    const patientId = (await patientOf(two.desk)).id;
    const parent = await opened(patientId);
    await place(parent.id, 'V5');
    const repair = await opened(patientId, { parentCaseId: parent.id }, 'repair');
    expect(repair.parentCase).toMatchObject({ id: parent.id, number: parent.number, title: parent.title });
    const seen = await two.desk.get(`GET /cases/${parent.id}`, caseView);
    const link = { id: repair.id, number: repair.number, state: 'open', title: repair.title };
    expect(seen.followingCases).toEqual([link]);
    expect(seen.events.at(-1)?.sentence).toBe(`Case ${repair.number} follows this one.`);
    const after = await two.desk.get(`GET /cases/${parent.id}/aftercare`, aftercareView);
    expect(after.followingCases).toEqual([link]);
  });

  it('are refused while the denture is not placed, naming what would be accepted', async () => {
    const patientId = (await patientOf(two.desk)).id;
    const parent = await opened(patientId);
    const early = await open(patientId, { parentCaseId: parent.id }, 'repair');
    expect(early).toMatchObject({ status: 409, body: { code: 'casework.state-conflict' } });
    expect(JSON.stringify(early.body)).toContain('before placement');
    const { followingCases } = await two.desk.get(`GET /cases/${parent.id}`, caseView);
    expect(followingCases).toEqual([]);
  });

  it('may stand alone for a denture that was made elsewhere', async () => {
    const alone = await opened((await patientOf(two.desk)).id, {}, 'repair');
    expect(alone).toMatchObject({ parentCase: null, followingCases: [] });
  });
});
