import { setTimeout as pause } from 'node:timers/promises';
import { jest } from '@jest/globals';
import type { CaseView } from '@archwright/contracts';
import { seededRandom } from '@archwright/kernel';
import { until } from '../support/until.js';
import { bookChain } from './booking-desk.js';
import { CrashingPostgres } from './crashing-postgres.js';
import { openDemoService, type DemoService } from './demo-service.js';
import { PostOffice } from './post-office.js';
import { runSize, seed, tell } from './run-size.js';
import { changedChains, doubleBookings, partChains } from './whole-chains.js';

const CRASHES = runSize('ARCHWRIGHT_DATABASE_CRASHES', 3);
const LONGEST_LIFE_MS = 2_500;
const BACK_WITHIN_MS = 60_000;

jest.setTimeout(180_000 + CRASHES * 20_000);

let database: CrashingPostgres;
let office: PostOffice;
let service: DemoService;
beforeAll(async () => {
  database = await CrashingPostgres.open();
  office = await PostOffice.open();
  service = await openDemoService(database.url, office.url);
  await Promise.all([service.api.start(), service.worker.start()]);
});
afterAll(async () => {
  await service.close();
  await office.close();
  await database.close();
});

const health = async (path: string): Promise<number> => (await fetch(`${service.url}/health/${path}`)).status;

describe('a database that crashes under load', () => {
  it('keeps what was acknowledged, and API and worker go on by themselves once it is back', async () => {
    const random = seededRandom(seed);
    const client = await service.signIn('desk');
    const booked: CaseView[] = [];
    let crashes = 0;
    const desk = (async () => {
      for (let number = 0; crashes < CRASHES; number++) {
        booked.push(await bookChain(client, `Crash-${String(number)}`));
      }
    })();
    const whileAway: number[] = [];
    while (crashes < CRASHES) {
      await pause(random.nextBelow(LONGEST_LIFE_MS));
      await database.crash();
      whileAway.push(await health('ready'), await health('live'));
      await database.startAgain();
      await until(async () => (await health('ready')) === 200, BACK_WITHIN_MS);
      crashes++;
    }
    await desk;

    tell('database', { crashes, 'chains booked': booked.length, 'calls put off': client.putOff });
    expect(client.putOff).toBeGreaterThan(0);
    expect(whileAway).toEqual(Array.from({ length: CRASHES }, () => [503, 200]).flat());
    expect(await changedChains(client, booked)).toEqual([]);
    expect(await partChains(service)).toEqual([]);
    expect(await doubleBookings(service)).toBe(0);
    const addresses = booked.map((_, number) => `crash-${String(number)}@example.test`);
    await until(() => addresses.every((address) => office.mailsTo(address).length > 0), BACK_WITHIN_MS);
    expect([service.api.isRunning, service.worker.isRunning]).toEqual([true, true]);
  });
});
