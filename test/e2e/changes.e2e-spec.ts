import type { INestApplication } from '@nestjs/common';
import { createLogger, parseConfiguration } from '@archwright/platform';
import { patientView, type Change } from '@archwright/contracts';
import { createApi } from '../../apps/api/src/create-api.js';
import { listen, type EventStream } from '../support/event-stream.js';
import { until } from '../support/until.js';
import { Person, booked, caseOf } from './cases-client.js';
import { NOW, openDemoApi, type DemoApi } from './practice/demo-api.js';

let api: DemoApi;
/** Another process on the same database. */
let other: INestApplication;
let streams: EventStream[];
beforeAll(async () => {
  api = await openDemoApi();
  const configuration = parseConfiguration({
    DATABASE_URL: api.database.url,
    SESSION_SECRET: 'a-secret-of-the-tests-long-enough-for-it',
    LOG_LEVEL: 'silent',
    ARCHWRIGHT_CLOCK: NOW.toISOString(),
  });
  other = await createApi(configuration, createLogger('api', 'silent'));
  await other.listen(0, '127.0.0.1');
}, 60_000);
beforeEach(() => {
  streams = [];
});
afterEach(() => {
  for (const stream of streams) stream.close();
});
afterAll(() => api.close());

async function follow(url: string, cookie: string, from?: string): Promise<EventStream> {
  const stream = await listen(url, cookie, from);
  streams.push(stream);
  await until(() => stream.heard.length > 0);
  return stream;
}

async function enterPatient(familyName: string): Promise<string> {
  const answer = await fetch(`${api.url}/patients`, {
    method: 'POST',
    headers: {
      cookie: await api.signIn('desk'),
      'content-type': 'application/json',
      'idempotency-key': `changes-${familyName}`,
    },
    body: JSON.stringify({ givenName: 'Live', familyName, birthOn: '1950-01-02', zone: 'Europe/London' }),
  });
  return patientView.parse(await answer.json()).id;
}

const changesOf = ({ heard }: EventStream): Change[] => heard.flatMap(({ changes }) => changes);
const idsOf = (stream: EventStream): (string | null)[] => changesOf(stream).map(({ id }) => id);

describe('the stream of changes', () => {
  it('tells what another process committed: its kind, its id and whose deed it was, to everyone but a laboratory', async () => {
    const otherUrl = `${await other.getUrl()}/api/v1`;
    const [desk, lab] = await Promise.all([
      follow(otherUrl, await api.signIn('desk')),
      follow(otherUrl, await api.signIn('bench')),
    ]);
    const patientId = await enterPatient('Everyone');
    await until(() => idsOf(desk).includes(patientId));
    const told = desk.heard.flatMap(({ changes }) => changes).filter(({ id }) => id === patientId);
    expect(told).toEqual([{ kind: 'patient', id: patientId, actorId: expect.any(String) as string }]);
    // Both are told by the same look, so what the laboratory has not heard by now it does not hear.
    await until(() => lab.heard.length >= desk.heard.length);
    expect(idsOf(lab)).not.toContain(patientId);
  });

  it('tells a laboratory of its own work by name, of other work that something moved, and of nothing else', async () => {
    const [desk, lab] = await Promise.all([
      follow(api.url, await api.signIn('desk')),
      follow(api.url, await api.signIn('bench')),
    ]);
    const person = new Person(api.url, await api.signIn('desk'));
    const elsewhere = await caseOf(person);
    await until(() => idsOf(desk).includes(elsewhere.id) && changesOf(lab).length > 0);
    expect(changesOf(lab)).toEqual([{ kind: 'work', id: null, actorId: null }]);

    const before = changesOf(lab).length;
    await booked(person, elsewhere.id);
    await until(() => idsOf(lab).includes(elsewhere.id));
    const kinds = new Set(changesOf(desk).map(({ kind }) => kind));
    expect(kinds).toContain('hold');
    const told = changesOf(lab).slice(before);
    expect(
      told.every(({ kind, id }) => (kind === 'case' && id === elsewhere.id) || (kind === 'work' && id === null)),
    ).toBe(true);
  });

  it('goes on where a listener left off', async () => {
    const cookie = await api.signIn('manager');
    const first = await follow(api.url, cookie);
    first.close();
    const missed = await enterPatient('Missed');
    const again = await follow(api.url, cookie, first.heard.at(-1)?.id);
    await until(() => idsOf(again).includes(missed));
    expect(again.heard.some(({ isEverything }) => isEverything)).toBe(false);
  });

  it('tells a listener from another database to look at everything', async () => {
    const stream = await follow(api.url, await api.signIn('desk'), '999999999999');
    expect(stream.heard[0]).toMatchObject({ changes: [], isEverything: true });
  });

  it('ends when the service does, instead of holding it up', async () => {
    const stream = await follow(`${await other.getUrl()}/api/v1`, await api.signIn('desk'));
    await other.close();
    await stream.ended;
    expect(stream.heard).not.toEqual([]);
  });
});
