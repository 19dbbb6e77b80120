import { IdempotencyKeys, type Actor } from '@archwright/casework';
import { answerOnce, type IdempotentRequest } from '@archwright/platform';
import { Clinic, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { NOW } from './demo-api.js';
import { openDemoRows, type DemoRows } from './demo-practice.js';

let demo: DemoRows;
let actor: Actor;
beforeAll(async () => {
  demo = await openDemoRows();
  const { organisationId } = demo;
  actor = {
    organisationId,
    userId: uuidv7(),
    role: 'front-desk',
    clinicIds: [],
    laboratoryIds: [],
    practitionerId: null,
  };
}, 60_000);
afterAll(() => demo.close());

const aRequest = (change: Partial<IdempotentRequest> = {}): IdempotentRequest => ({
  key: uuidv7(),
  fingerprint: 'a',
  ...change,
});

const addClinic = async (tx: EntityManager): Promise<{ id: string }> => {
  const id = uuidv7();
  await tx.insert(Clinic, { id, name: 'Added', zone: 'UTC', address: '' });
  return { id };
};

const call = (request: IdempotentRequest, { by = actor, operation = 'add-clinic', work = addClinic } = {}) =>
  demo.work((tx) => answerOnce(new IdempotencyKeys(by, operation, NOW), tx, request, () => work(tx)));

describe('a call that is repeated under its key', () => {
  it('has its effect once and gets the first answer again', async () => {
    const request = aRequest();
    const first = await call(request);
    expect(await call(request)).toEqual(first);
    expect(await demo.work((tx) => tx.countBy(Clinic, { id: first.id }))).toBe(1);
    expect((await call(aRequest())).id).not.toBe(first.id);
  });

  it('is refused when it asks for something else', async () => {
    const request = aRequest();
    await call(request);
    await expect(call({ ...request, fingerprint: 'b' })).rejects.toMatchObject({
      code: 'platform.idempotency-key-reused',
    });
  });

  it('is another call when another person makes it, or for another purpose', async () => {
    const request = aRequest();
    const ids = [
      (await call(request)).id,
      (await call(request, { by: { ...actor, userId: uuidv7() } })).id,
      (await call(request, { operation: 'add-other' })).id,
    ];
    expect(new Set(ids).size).toBe(3);
  });

  it('is told to wait while the first one is still running', async () => {
    const request = aRequest();
    let refusal: unknown;
    const work = async (tx: EntityManager) => {
      refusal = await call(request).catch((error: unknown) => error);
      return addClinic(tx);
    };
    const first = await call(request, { work });
    expect(refusal).toMatchObject({ code: 'platform.idempotency-key-conflict' });
    expect(await call(request)).toEqual(first);
  });

  it('may succeed after a first one that failed, which left nothing', async () => {
    const request = aRequest();
    const failing = { work: () => Promise.reject(new Error('no luck')) };
    await expect(call(request, failing)).rejects.toThrow('no luck');
    expect((await call(request)).id).toBeDefined();
  });
});
