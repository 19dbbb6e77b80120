import {
  answerOnce,
  fingerprintOf,
  IdempotencyKeyReusedError,
  type IdempotencyLedger,
  type LedgerEntry,
} from './idempotency.js';

class LedgerInMemory implements IdempotencyLedger<null> {
  private readonly entries = new Map<string, LedgerEntry>();

  claim(_transaction: null, key: string): Promise<LedgerEntry | null> {
    return Promise.resolve(this.entries.get(key) ?? null);
  }
  keep(_transaction: null, { key, fingerprint }: { key: string; fingerprint: string }, answer: unknown): Promise<void> {
    this.entries.set(key, { fingerprint, answer });
    return Promise.resolve();
  }
}

describe('one answer per key', () => {
  const request = { key: 'key-of-the-intent', fingerprint: fingerprintOf('POST', '/holds', { offer: 1 }) };

  it('does the work once and repeats its answer', async () => {
    const ledger = new LedgerInMemory();
    let times = 0;
    const work = () => Promise.resolve({ times: ++times });
    expect(await answerOnce(ledger, null, request, work)).toEqual({ times: 1 });
    expect(await answerOnce(ledger, null, request, work)).toEqual({ times: 1 });
    expect(times).toBe(1);
  });

  it('refuses the key for another request', async () => {
    const ledger = new LedgerInMemory();
    await answerOnce(ledger, null, request, () => Promise.resolve(1));
    const other = { ...request, fingerprint: fingerprintOf('POST', '/holds', { offer: 2 }) };
    await expect(answerOnce(ledger, null, other, () => Promise.resolve(2))).rejects.toThrow(IdempotencyKeyReusedError);
  });
});

it('tells requests apart by all that is in them but a password', () => {
  const of = (body: object) => fingerprintOf('POST', '/users', body);
  expect(of({ name: 'Nia', password: 'the-first-long-password' })).toBe(of({ name: 'Nia', password: 'another' }));
  expect(of({ name: 'Nia' })).not.toBe(of({ name: 'Ira' }));
});
