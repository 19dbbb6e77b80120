import { randomUUID } from 'node:crypto';
import { problem, type Problem } from '@archwright/contracts';
import fc from 'fast-check';
import { everyRow } from '../support/every-row.js';
import { found } from './booking-practice.js';
import { openDemoApi, type DemoApi } from './practice/demo-api.js';
import { routesOf, wrongValues, type Route } from './wrong-values.js';

const RUNS_PER_ROUTE = 25;

let api: DemoApi;
let administrator: string;
let routes: Route[];
let before: Awaited<ReturnType<typeof everyRow>>;
let asked = 0;
beforeAll(async () => {
  api = await openDemoApi();
  administrator = await api.signIn('admin');
  routes = routesOf(await (await fetch(new URL('/api/openapi.json', api.url))).json());
  before = await everyRow(api.database);
}, 60_000);
afterAll(() => api.close());

interface Sent {
  readonly text?: string | undefined;
  readonly contentType?: string;
  readonly query?: Readonly<Record<string, string>>;
}

/** Asks with everything that a right request has, except what is wrong in it. */
async function refusalOf({ method, path }: Route, { text, contentType = 'application/json', query }: Sent) {
  asked += 1;
  const url = new URL(
    path.replaceAll(/\{\w+\}/g, () => randomUUID()),
    api.url,
  );
  url.search = new URLSearchParams(query).toString();
  const answer = await fetch(url, {
    method,
    headers: {
      cookie: administrator,
      'idempotency-key': randomUUID(),
      'if-match': '"1"',
      ...(text === undefined ? {} : { 'content-type': contentType }),
    },
    ...(text === undefined ? {} : { body: text }),
  });
  expect(answer.headers.get('content-type')).toContain('application/problem+json');
  const said = await answer.text();
  expect(said).not.toMatch(/<html|node_modules|\.[jt]s:\d+:\d+/i);
  const refusal = problem.parse(JSON.parse(said));
  expect(refusal.status).toBe(answer.status);
  return refusal;
}

/** Every mistake says where it is and what would be accepted. */
function requireHelpful({ errors = [] }: Problem, path: string): void {
  // A value of several forms is refused as a whole, above the mistake.
  const isThere = (found: string) => found === path || found.startsWith(`${path}.`) || path.startsWith(`${found}.`);
  const named = errors.map((each) => each.path);
  expect({ path, named, isNamed: named.some((found) => path === '' || isThere(found)) }).toMatchObject({
    isNamed: true,
  });
  // "Invalid input" is what the schema library says when the contract itself has no better words.
  const helpless = errors.filter((each) => each.accepted === undefined && each.problem.startsWith('Invalid'));
  expect(helpless).toEqual([]);
}

const FILES = ['/patient-imports', '/calendar', '/photographs'];
const isFile = ({ path }: Route) => FILES.some((end) => path.endsWith(end));
const bodies = () => routes.filter((route) => route.body !== null);

describe('a request with a mistake in it', () => {
  it('is refused with 400, the field and what would be accepted, on every route that takes a body', async () => {
    expect(bodies().length).toBeGreaterThan(20);
    for (const route of bodies()) {
      const wrong = route.body === null ? null : wrongValues(route.body);
      if (wrong === null) throw new Error(`${route.name} takes any body.`);
      await fc.assert(
        fc.asyncProperty(wrong, async ({ path, value }) => {
          const refusal = await refusalOf(route, { text: JSON.stringify(value) });
          expect({ route: route.name, status: refusal.status }).toEqual({ route: route.name, status: 400 });
          requireHelpful(refusal, path);
        }),
        { seed: 20260105, numRuns: RUNS_PER_ROUTE },
      );
    }
  }, 120_000);

  it.each<[string, Sent, number]>([
    ['broken JSON', { text: '{"a": ' }, 400],
    ['no JSON at all', { text: '<a/>' }, 400],
    ['an empty body', { text: '' }, 400],
    ['a key that would reach into the program', { text: '{"__proto__": {"a": 1}}' }, 400],
    ['text', { text: 'a', contentType: 'text/html' }, 415],
  ])('is refused when the body is %s', async (_, sent, status) => {
    for (const route of bodies()) {
      const refusal = await refusalOf(route, sent);
      expect({ route: route.name, status: refusal.status }).toEqual({ route: route.name, status });
    }
  });

  it('is refused when the body is more than is taken, which is more where whole files are', async () => {
    for (const route of bodies()) {
      const length = isFile(route) ? 10_500_000 : 2_200_000;
      const { status } = await refusalOf(route, { text: JSON.stringify('x'.repeat(length)) });
      expect({ route: route.name, status }).toEqual({ route: route.name, status: 413 });
    }
  });

  it('is refused with the name of the parameter when the address is wrong', async () => {
    let checked = 0;
    for (const route of routes) {
      for (const [name, schema] of Object.entries(route.query)) {
        if (schema.format === undefined && schema.enum === undefined && schema.type !== 'integer') continue;
        const refusal = await refusalOf(route, { query: { [name]: 'no such value' } });
        expect({ route: route.name, name, status: refusal.status }).toEqual({ route: route.name, name, status: 400 });
        requireHelpful(refusal, name);
        checked += 1;
      }
    }
    expect(checked).toBeGreaterThan(8);
  });

  it.each([
    ['NUL', 'a\u0000b', 'a%00b'],
    ['half of a character', 'a\ud800b', null],
  ])('is refused where text holds %s, with the name of the field', async (_, text, inAddress) => {
    for (const route of bodies()) {
      const [name = 'any'] = Object.keys(route.body?.properties ?? {});
      const refusal = await refusalOf(route, { text: JSON.stringify({ [name]: { deep: [text] } }) });
      expect({ route: route.name, errors: refusal.errors }).toMatchObject({
        route: route.name,
        errors: [{ path: `${name}.deep.0`, accepted: 'text of whole characters, without NUL' }],
      });
    }
    for (const route of routes) {
      const [name] = Object.keys(route.query);
      if (name === undefined || inAddress === null) continue;
      expect((await refusalOf(route, { query: { [name]: text } })).errors).toMatchObject([{ path: name }]);
    }
  });

  it('is refused when a cursor names no place in the list, or a date no day', async () => {
    const cursor = (sortKey: string) => Buffer.from(JSON.stringify([sortKey, randomUUID()])).toString('base64url');
    const lists = routes.filter(({ query }) => 'cursor' in query);
    expect(lists.length).toBeGreaterThan(8);
    for (const route of lists) {
      const { status } = await refusalOf(route, { query: { cursor: cursor('\u0000') } });
      expect({ route: route.name, status }).toEqual({ route: route.name, status: 400 });
    }
    const named = (name: string) => found(routes.find((route) => route.name === name));
    for (const key of ['soon', '2027-02-30T00:00:00.000000']) {
      const { code } = await refusalOf(named('GET /api/v1/audit-entries'), { query: { cursor: cursor(key) } });
      expect(code).toBe('platform.cursor-invalid');
    }
    const born = await refusalOf(named('GET /api/v1/patients'), { query: { birthOn: '0000-01-01' } });
    expect(born.errors).toEqual([{ path: 'birthOn', problem: 'a date such as 2027-01-28' }]);
  });

  it('changes no row', async () => {
    expect(asked).toBeGreaterThan(RUNS_PER_ROUTE * 20);
    expect(await everyRow(api.database)).toEqual(before);
  });
});
