import { jest } from '@jest/globals';
import type { Role } from '@archwright/contracts';
import { uuidv7 } from '@archwright/records';
import { readOperations, type Operation } from '../conventions/operations.js';
import { PATIENT_NAME, PLACES, ROLES, openWalledPractice, type Place, type WalledPractice } from './walled-practice.js';
import type { Wall } from './wall.js';
import { OUTSIDE, WALLS } from './walls.js';

jest.setTimeout(120_000);

let practice: WalledPractice;
let operations: Operation[];
beforeAll(async () => {
  practice = await openWalledPractice();
  operations = await readOperations(practice.url);
});
afterAll(() => practice.close());

async function ask(name: string, { path, body }: Wall, cookie: string): Promise<{ status: number; text: string }> {
  const [method = '', template = ''] = name.split(' ');
  const sent = body?.(practice.records);
  const answer = await fetch(`${practice.url}${path?.(practice.records) ?? template}`, {
    method,
    headers: {
      cookie,
      // A version long gone: who gets past the wall changes nothing.
      'if-match': '"999"',
      'idempotency-key': uuidv7(),
      ...(sent === undefined ? {} : { 'content-type': 'application/json' }),
    },
    ...(sent === undefined ? {} : { body: JSON.stringify(sent) }),
  });
  return { status: answer.status, text: await textOf(answer) };
}

/** A stream has no end to wait for; what it tells has a test of its own. */
async function textOf(answer: Response): Promise<string> {
  if (answer.headers.get('content-type')?.startsWith('text/event-stream') !== true) return answer.text();
  await answer.body?.cancel();
  return '';
}

/** @returns the status that the wall gives this caller, apart from who came before */
function expected({ roles, notByAdministrator, answers }: Wall, place: Place, role: Role): number {
  const isNamed = roles === 'everyone' || roles.includes(role);
  if (!isNamed && (role !== 'administrator' || notByAdministrator === true)) return 403;
  // An administrator is at home in every clinic of the organisation.
  const answer = answers[role === 'administrator' && place === 'otherClinic' ? 'own' : place];
  return typeof answer === 'number' ? answer : (answer[role] ?? 404);
}

describe('the walls of the API', () => {
  it('are described for every route that there is', () => {
    const described = [...Object.keys(WALLS), ...Object.keys(OUTSIDE)];
    expect(described.sort()).toEqual(operations.map(({ name }) => name).sort());
  });

  it.each(Object.entries(WALLS))('%s is answered to whom it is for', async (name, wall) => {
    const answered: Record<string, number> = { nobody: (await ask(name, wall, '')).status };
    const wanted: Record<string, number> = { nobody: 401 };
    const told: string[] = [];
    let isDone = false;
    // Strangers first, so that what they might have changed would show.
    for (const place of [...PLACES].reverse()) {
      for (const role of ROLES) {
        const { status, text } = await ask(name, wall, practice.cookie(place, role));
        const caller = `${place} ${role}`;
        const alone = expected(wall, place, role);
        answered[caller] = status;
        wanted[caller] = isDone && alone < 300 ? (wall.afterwards ?? alone) : alone;
        isDone ||= alone < 300;
        const isStranger = place === 'otherOrganisation' || (place === 'otherClinic' && role !== 'administrator');
        if (isStranger && text.includes(PATIENT_NAME)) told.push(caller);
      }
    }
    expect(answered).toEqual(wanted);
    expect(told).toEqual([]);
  });
});
