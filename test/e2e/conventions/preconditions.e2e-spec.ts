import { problem } from '@archwright/contracts';
import { uuidv7 } from '@archwright/records';
import { openDemoApi, type DemoApi } from '../practice/demo-api.js';
import { readOperations, type Operation } from './operations.js';

/** Changing routes that want neither header, and why a repeat or a lost update does no harm. */
const WANT_NEITHER: Readonly<Record<string, string>> = {
  'POST /sessions': 'nobody is signed in yet; another session takes nothing from anybody',
  'PUT /sessions/current/password': 'wants the present password, which it was not any more the second time',
  'DELETE /sessions/current': 'ended is ended',
  'POST /replies/{purpose}': 'its token names the visit and the purpose; the same reply again changes nothing',
  'POST /cases/{id}/offers': 'asking again makes other offers and takes nobody’s time',
  'POST /setup/preview': 'a preview',
  'DELETE /setup/closures/{id}': 'gone is gone',
  'POST /patient-imports': 'the same file again writes no row',
  'PUT /treatment-paths/{id}/withdrawal': 'a version never changes, and withdrawn is withdrawn',
  'POST /ripples/move': 'a preview',
  'POST /ripples/cancel': 'a preview',
  'DELETE /holds/{id}': 'given back is given back',
  'POST /resources/{id}/calendar': 'the same feed again changes nothing',
  'POST /lab/questions/{id}/answer': 'a question is answered once; a second answer is refused',
  'PUT /demo/clock': 'moves forward only; outside the demonstration there is no such route',
};

const REFUSALS: Readonly<Record<string, { status: number; code: string }>> = {
  'If-Match': { status: 428, code: 'platform.precondition-missing' },
  'Idempotency-Key': { status: 400, code: 'platform.idempotency-key-missing' },
};

let api: DemoApi;
let cookie: string;
let changing: Operation[];
beforeAll(async () => {
  api = await openDemoApi();
  cookie = await api.signIn('admin');
  changing = (await readOperations(api.url)).filter(({ method }) => method !== 'GET');
}, 60_000);
afterAll(() => api.close());

describe('every route that changes something', () => {
  it('wants a precondition or a key for its intent, or says here why it needs none', () => {
    const without = changing.filter(({ wantedHeaders }) => wantedHeaders.length === 0).map(({ name }) => name);
    expect(without.sort()).toEqual(Object.keys(WANT_NEITHER).sort());
    expect(changing.length).toBeGreaterThan(without.length);
  });

  it('refuses a call without the header that it wants', async () => {
    for (const { name, method, path, wantedHeaders } of changing) {
      for (const header of wantedHeaders) {
        const answer = await fetch(`${api.url}${path.replaceAll(/\{\w+\}/g, () => uuidv7())}`, {
          method,
          headers: { cookie, 'content-type': 'application/json' },
          body: '{}',
        });
        const { status, code } = problem.parse(await answer.json());
        expect({ name, status, code }).toEqual({ name, ...REFUSALS[header] });
      }
    }
  });
});
