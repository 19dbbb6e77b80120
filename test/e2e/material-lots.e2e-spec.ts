import { caseView, materialLotPage, materialLotView, problem, type CaseView } from '@archwright/contracts';
import { LabStep } from '@archwright/records';
import { booked, caseOf, openTwoPractices, type TwoPractices } from './cases-client.js';

describe('lots of material', () => {
  let two: TwoPractices;
  let view: CaseView;
  beforeAll(async () => {
    two = await openTwoPractices();
    view = await booked(two.desk, (await caseOf(two.desk)).id);
  }, 90_000);
  afterAll(() => two.close());

  const step = (index: number) => {
    const found = view.labSteps[index];
    if (found === undefined) throw new Error('The case has laboratory work.');
    return found;
  };
  const begin = (index: number) =>
    two.rows((tx) => tx.update(LabStep, { id: step(index).id }, { state: 'started', startedAt: new Date() }));
  const noteAt = (index: number, over: Record<string, unknown> = {}, ask: { key?: string } = {}) => {
    const body = { material: 'Denture base resin', lot: 'R-204', expiresOn: '2028-01-31', ...over };
    return two.bench.ask(`POST /lab/steps/${step(index).id}/material-lots`, { body, ...ask });
  };

  it('are noted at a step that has begun, once per call', async () => {
    expect(problem.parse((await noteAt(0)).body)).toMatchObject({ status: 409, code: 'casework.state-conflict' });
    await begin(0);
    const first = await noteAt(0, {}, { key: 'one-lot-of-resin' });
    expect(materialLotView.parse(first.body)).toMatchObject({ lot: 'R-204', step: step(0).code, patientName: '' });
    expect((await noteAt(0, {}, { key: 'one-lot-of-resin' })).body).toEqual(first.body);
    const { events } = await two.desk.get(`GET /cases/${view.id}`, caseView);
    expect(events.at(-1)?.sentence).toBe('Denture base resin, lot R-204, went into the work.');
  });

  it('are refused after their last day, by the calendar of the laboratory', async () => {
    await begin(1);
    expect((await noteAt(1, { lot: 'OLD', expiresOn: '2027-01-03' })).status).toBe(409);
    expect((await noteAt(1, { lot: 'LAST', expiresOn: '2027-01-04' })).status).toBe(201);
  });

  it('lead to every case they went into, with whom to call; a laboratory sees numbers only', async () => {
    const recalled = await two.desk.get('GET /material-lots?lot=r-204', materialLotPage);
    expect(recalled.items).toMatchObject([{ caseId: view.id, caseNumber: view.number, caseState: 'open' }]);
    expect(recalled.items[0]?.patientName).toBe(view.patient.name);
    const atBench = await two.bench.ask('GET /material-lots?lot=R-204');
    expect(materialLotPage.parse(atBench.body).items).toHaveLength(1);
    expect(JSON.stringify(atBench.body)).not.toContain(view.patient.name);
    expect((await two.desk.get('GET /material-lots?lot=R-205', materialLotPage)).items).toEqual([]);
    const inCase = await two.desk.get(`GET /material-lots?caseId=${view.id}`, materialLotPage);
    expect(inCase.items.map(({ lot }) => lot)).toEqual(['LAST', 'R-204']);
  });

  it('are noted by the bench only, and are unknown next door', async () => {
    const path = `POST /lab/steps/${step(0).id}/material-lots`;
    const body = { material: 'Resin', lot: 'X', expiresOn: null };
    expect((await two.desk.ask(path, { body })).status).toBe(403);
    expect((await two.bench.ask(path, { body, key: null })).status).toBe(400);
    expect((await two.stranger.get('GET /material-lots?lot=R-204', materialLotPage)).items).toEqual([]);
    expect(problem.parse((await two.desk.ask('GET /material-lots')).body).status).toBe(400);
  });
});
