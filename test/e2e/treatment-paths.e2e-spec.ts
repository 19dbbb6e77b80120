import { pathList, pathView, practiceView, problem, type PathView } from '@archwright/contracts';
import { treatmentPath } from '@archwright/protocol';
import { Person, booked, caseBody, caseOf, openTwoPractices, patientOf, type TwoPractices } from './cases-client.js';

let two: TwoPractices;
let manager: Person;
beforeAll(async () => {
  two = await openTwoPractices();
  manager = new Person(two.api.url, await two.api.signIn('manager'));
}, 90_000);
afterAll(() => two.close());

async function latestOf(code: string): Promise<PathView> {
  const { items } = await manager.get('GET /treatment-paths', pathList);
  const found = items.find((each) => each.code === code && each.isLatest);
  if (found === undefined) throw new Error(`There is no ${code}.`);
  return manager.get(`GET /treatment-paths/${found.id}`, pathView);
}
const publish = (code: string, version: number, document: object) =>
  manager.ask(`PUT /treatment-paths/${code}`, { version, body: { document } });

it('publishes a changed copy as the next version; open cases keep theirs', async () => {
  const open = await booked(two.desk, (await caseOf(two.desk, {}, 'reline')).id);
  const first = await latestOf('reline');
  expect(first).toMatchObject({ version: 1, publishedBy: null, openCases: 1 });
  const next = pathView.parse((await publish('reline', 1, { ...first.document, title: 'Reline, our way' })).body);
  expect(next).toMatchObject({
    version: 2,
    title: 'Reline, our way',
    publishedBy: 'Ada Manager-Example',
    openCases: 0,
  });
  const { paths } = await two.desk.get('GET /practice', practiceView);
  expect(paths.filter(({ code }) => code === 'reline').map(({ version }) => version)).toEqual([2, 1]);
  expect((await manager.get(`GET /treatment-paths/${first.id}`, pathView)).openCases).toBe(1);
  expect(open.arches[0]?.pathVersionId).toBe(first.id);
});

it('begins a new path from a copy under another code', async () => {
  const { document } = await latestOf('repair');
  const copy = { ...document, code: 'repair-at-once', title: 'Repair at once' };
  expect((await publish('repair-at-once', 0, copy)).status).toBe(200);
  expect((await publish('repair-at-once', 0, copy)).status).toBe(412);
  expect((await publish('another-code', 0, copy)).status).toBe(422);
});

it('names every fault of a path that it does not publish', async () => {
  const { document, version } = await latestOf('conventional');
  const { visits: before } = treatmentPath.parse(document);
  const visits = before.map((visit, index) => (index === 0 ? { ...visit, isDelivery: true } : visit));
  const { status, body } = await publish('conventional', version, { ...document, visits });
  expect([status, problem.parse(body).code]).toEqual([422, 'protocol.path-invalid']);
  expect(problem.parse(body).detail).toContain('2 visits place the denture, exactly one must');
  expect((await latestOf('conventional')).version).toBe(version);
});

it('keeps new cases from a version that is withdrawn, and offers it again', async () => {
  const path = await latestOf('duplicate');
  const withdraw = (isWithdrawn: boolean) =>
    manager.get(`PUT /treatment-paths/${path.id}/withdrawal`, pathView, { body: { isWithdrawn } });
  const open = async () => {
    const patientId = (await patientOf(two.desk)).id;
    const arches = [{ arch: 'upper', pathVersionId: path.id }];
    return (await two.desk.ask('POST /cases', { body: await caseBody(two.desk, { patientId, arches }) })).status;
  };
  expect(await withdraw(true)).toMatchObject({ isWithdrawn: true });
  expect(await open()).toBe(409);
  await withdraw(true);
  expect(await withdraw(false)).toMatchObject({ isWithdrawn: false });
  expect(await open()).toBe(201);
});
