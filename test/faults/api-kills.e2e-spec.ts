import { setTimeout as pause } from 'node:timers/promises';
import { jest } from '@jest/globals';
import type { CaseView } from '@archwright/contracts';
import { seededRandom } from '@archwright/kernel';
import { createSuiteDatabase, type SuiteDatabase } from '../support/database.js';
import { bookChain } from './booking-desk.js';
import { openDemoService, type DemoService } from './demo-service.js';
import { runSize, seed, tell } from './run-size.js';
import type { StubbornClient } from './stubborn-client.js';
import { changedChains, doubleBookings, partChains } from './whole-chains.js';

const KILLS = runSize('ARCHWRIGHT_API_KILLS', 6);
const DESKS = 3;
const LONGEST_LIFE_MS = 2_500;
/** Nothing listens there: mail is not what this suite looks at, and no worker runs. */
const NO_MAIL = 'smtp://127.0.0.1:9';

jest.setTimeout(120_000 + KILLS * 20_000);

let database: SuiteDatabase;
let service: DemoService;
let clients: StubbornClient[];
beforeAll(async () => {
  database = await createSuiteDatabase();
  service = await openDemoService(database.url, NO_MAIL);
  await service.api.start();
  clients = await Promise.all(Array.from({ length: DESKS }, () => service.signIn('desk')));
});
afterAll(async () => {
  await service.close();
  await database.drop();
});

/** Desks book side by side while the API dies at random moments. */
async function bookThroughKills(): Promise<CaseView[]> {
  const random = seededRandom(seed);
  const booked: CaseView[] = [];
  let kills = 0;
  const desks = clients.map(async (client, desk) => {
    for (let number = 0; kills < KILLS; number++) {
      booked.push(await bookChain(client, `Desk-${String(desk)}-${String(number)}`));
    }
  });
  while (kills < KILLS) {
    await pause(random.nextBelow(LONGEST_LIFE_MS));
    await service.api.stop('SIGKILL');
    await service.api.start();
    kills++;
  }
  await Promise.all(desks);
  return booked;
}

describe('an API that is killed in the middle of bookings', () => {
  it('keeps what it acknowledged whole, leaves nothing half-done, and answers a repeat as it did before', async () => {
    const booked = await bookThroughKills();
    const [client] = clients;
    if (client === undefined) throw new Error('There is no desk.');

    const acknowledged = clients.flatMap((each) => each.acknowledged).filter(({ path }) => !path.endsWith('/offers'));
    const differing: string[] = [];
    for (const { text, status, ...call } of acknowledged) {
      const again = await client.send(call, call.key);
      if (again.text !== text || again.status !== status) differing.push(call.path);
    }
    const cutOff = clients.reduce((sum, each) => sum + each.cutOff, 0);
    tell('API', {
      kills: KILLS,
      'calls cut off': cutOff,
      'chains booked': booked.length,
      'answers repeated': acknowledged.length,
    });
    expect(cutOff).toBeGreaterThan(0);
    expect(differing).toEqual([]);
    expect(booked.length).toBeGreaterThanOrEqual(DESKS);
    expect(await changedChains(client, booked)).toEqual([]);
    expect(await partChains(service)).toEqual([]);
    expect(await doubleBookings(service)).toBe(0);

    const [made] = await service.rows<{ patients: number; confirmations: number }>(
      `SELECT (SELECT count(*)::integer FROM patient_identity WHERE family_name LIKE 'Desk-%') AS patients,
         (SELECT count(*)::integer FROM audit_entry WHERE action = 'confirm-hold') AS confirmations`,
    );
    expect(made).toEqual({ patients: booked.length, confirmations: booked.length });
  });
});
