import { importedPatientTable, patientPage, problem } from '@archwright/contracts';
import { Person, openTwoPractices, type TwoPractices } from './cases-client.js';

let two: TwoPractices;
let manager: Person;
beforeAll(async () => {
  two = await openTwoPractices();
  manager = new Person(two.api.url, await two.api.signIn('manager'));
}, 90_000);
afterAll(() => two.close());

const TABLE = [
  'given name;family name;birth date',
  'Ina;Müller-Example;28.03.1951',
  'Ivo;Later-Example;01.01.2099',
  '',
].join('\r\n');
const bytes = Buffer.from(TABLE, 'latin1').toString('base64');
const body = (over: object) => ({
  contentBase64: bytes,
  zone: 'Europe/Berlin',
  dateOrder: 'dmy',
  encoding: 'windows-1252',
  ...over,
});
const take = (over: object) => manager.get('POST /patient-imports', importedPatientTable, { body: body(over) });
const found = async () => (await manager.get('GET /patients?q=Müller', patientPage)).items.length;

it('tells of a trial what would happen, and keeps nothing of it', async () => {
  const tried = await take({ isTrial: true });
  expect(tried).toMatchObject({ rows: 2, added: 1, rejectedCount: 1, isWritten: false });
  expect(tried.rejected.map(({ line }) => line)).toEqual([3]);
  expect(tried.rejected[0]?.reason).toContain('accepted: a past date');
  expect(await found()).toBe(0);
});

it('writes nothing of a strict import with a rejected row', async () => {
  expect(await take({ isStrict: true })).toMatchObject({ isWritten: false });
  expect(await found()).toBe(0);
});

it('takes the good rows once, whatever their encoding, and gives the others back to be corrected', async () => {
  const taken = await take({});
  expect(taken).toMatchObject({ added: 1, isWritten: true });
  expect(taken.rejectsCsv).toContain('Ivo,Later-Example');
  expect(await take({})).toMatchObject({ added: 0, unchanged: 1 });
  expect(await found()).toBe(1);
});

it('says of a file that is none what would be accepted', async () => {
  const { status, body: refusal } = await manager.ask('POST /patient-imports', { body: body({ encoding: 'utf-8' }) });
  expect([status, problem.parse(refusal).detail]).toEqual([422, expect.stringContaining('The file is not UTF-8.')]);
  const nowhere = await manager.ask('POST /patient-imports', { body: body({ zone: 'Mars/Olympus' }) });
  expect([nowhere.status, problem.parse(nowhere.body).detail]).toEqual([422, expect.stringContaining('Accepted')]);
});
