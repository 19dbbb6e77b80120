import {
  CaseEvent,
  appendCaseEvent,
  changesSince,
  enqueueOutbox,
  inOrganisation,
  markDispatched,
  readInOrganisation,
  recordAudit,
  sealAudit,
  takeDueOutbox,
  uuidv7,
  verifyAudit,
  type Work,
} from '@archwright/records';
import { NOW, aCase, aPractice, nth, type TestPractice } from './records-practice.js';
import { until } from '../../support/until.js';
import { openRecordsDatabase, type RecordsDatabase } from './records-database.js';

let db: RecordsDatabase;
let practice: TestPractice;
beforeAll(async () => {
  db = await openRecordsDatabase(12);
}, 60_000);
afterAll(() => db.close());
beforeEach(async () => {
  practice = await aPractice(db.app);
});

const inside = <Result>(work: Work<Result>) => inOrganisation(db.app, practice.organisationId, work);
const deed = (action: string) => ({
  actorId: null,
  action,
  subjectKind: 'case',
  subjectId: uuidv7(),
  details: { from: 'open', to: 'paused' },
  at: NOW,
});

describe('a case history', () => {
  it('is numbered without gaps by writers at once, and never changed', async () => {
    const { caseId } = await inside((tx) => aCase(tx, practice));
    const event = { caseId, kind: 'visit-moved', body: { visit: 'V3' }, actorId: null, at: NOW };
    await Promise.all(Array.from({ length: 10 }, () => inside((tx) => appendCaseEvent(tx, event))));
    const events = await inside((tx) => tx.find(CaseEvent, { order: { sequence: 'ASC' } }));
    expect(events.map(({ sequence }) => sequence)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(nth(events, 0)).toMatchObject({ kind: 'visit-moved', body: { visit: 'V3' }, happenedAt: NOW });
    await expect(inside((tx) => tx.update(CaseEvent, { caseId }, { kind: 'other' }))).rejects.toThrow(
      /permission denied/,
    );
  });
});

describe('changes since a position', () => {
  const look = (since: bigint | null, organisationId = practice.organisationId) =>
    readInOrganisation(db.app, organisationId, (tx) => changesSince(tx, since));
  /** Looks again and again, as the service does: transactions of other suites may hold the latest back for a moment. */
  async function tellUntil(from: bigint, enough: (told: string[]) => boolean): Promise<string[]> {
    const told: string[] = [];
    let since = from;
    await until(async () => {
      const { position, changes } = await look(since);
      since = position;
      told.push(...(changes ?? []).map(({ id }) => id ?? ''));
      return enough(told);
    });
    return told;
  }

  it('tells each once, also one that began earlier and was committed later than another', async () => {
    const { position } = await look(null);
    const [early, late] = [deed('begun-first'), deed('committed-first')];
    const toldMeanwhile = await inside(async (tx) => {
      await recordAudit(tx, early);
      await inside((other) => recordAudit(other, late));
      return (await look(position)).changes;
    });
    expect(toldMeanwhile).toEqual([]);
    const told = await tellUntil(position, ({ length }) => length >= 2);
    expect(told.sort()).toEqual([early.subjectId, late.subjectId].sort());
  });

  it('tells of a case that its history grew, and nothing of another organisation', async () => {
    const other = await aPractice(db.app);
    const { position } = await look(null, other.organisationId);
    const { caseId } = await inside((tx) => aCase(tx, practice));
    await inside((tx) => appendCaseEvent(tx, { caseId, kind: 'visit-moved', body: {}, actorId: null, at: NOW }));
    expect(await tellUntil(position, (told) => told.includes(caseId))).toEqual([caseId]);
    expect((await look(position, other.organisationId)).changes).toEqual([]);
  });

  it('says that it is too much, or of another database, instead of telling it', async () => {
    const { position } = await look(null);
    await inside((tx) => recordAudit(tx, ...Array.from({ length: 501 }, () => deed('import'))));
    await until(async () => (await look(position)).changes === null);
    expect((await look(position + 1_000_000n)).changes).toBeNull();
  });
});

describe('the outbox', () => {
  it('keeps nothing of a transaction that did not commit', async () => {
    const failed = inside(async (tx) => {
      await enqueueOutbox(tx, 'check-stage', { stageId: uuidv7() }, NOW);
      throw new Error('changed my mind');
    });
    await expect(failed).rejects.toThrow('changed my mind');
    expect(await inside((tx) => takeDueOutbox(tx, NOW, 10))).toEqual([]);
  });

  it('hands each due row to one relay only, until it is marked', async () => {
    const later = new Date(NOW.getTime() + 1);
    await inside(async (tx) => {
      for (let number = 0; number < 6; number++)
        await enqueueOutbox(tx, 'check-stage', { stageId: String(number) }, NOW);
      await enqueueOutbox(tx, 'check-stage', { stageId: 'later' }, later);
    });
    await inside(async (first) => {
      const taken = await takeDueOutbox(first, NOW, 4);
      const others = await inside((second) => takeDueOutbox(second, NOW, 10));
      expect([taken.length, others.length]).toEqual([4, 2]);
      expect(taken.filter(({ id }) => others.some((other) => other.id === id))).toEqual([]);
      await markDispatched(
        first,
        taken.map(({ id }) => id),
        NOW,
      );
    });
    const left = await inside((tx) => takeDueOutbox(tx, later, 10));
    expect(left.map(({ payload }) => (payload as { stageId: string }).stageId)).toEqual(['4', '5', 'later']);
  });
});

describe('the audit trail', () => {
  const seal = async () => {
    let sealed = 0;
    for (let more = -1; more !== 0; sealed += more) more = await inside((tx) => sealAudit(tx, NOW));
    return sealed;
  };

  it('is chained after it was written, once per entry, by sealers at once', async () => {
    for (const action of ['opened', 'paused', 'resumed']) await inside((tx) => recordAudit(tx, deed(action)));
    expect(await inside(verifyAudit)).toMatchObject({ sealed: 0, unsealed: 3, broken: null });
    const counts = await Promise.all([1, 2, 3].map(() => inside((tx) => sealAudit(tx, NOW))));
    expect([...counts].sort()).toEqual([0, 0, 3]);
    await inside((tx) => recordAudit(tx, deed('closed')));
    expect(await seal()).toBe(1);
    expect(await inside(verifyAudit)).toMatchObject({ sealed: 4, unsealed: 0, broken: null });
  });

  it('leaves out an entry that is not committed and takes it up afterwards', async () => {
    await inside(async (writer) => {
      await recordAudit(writer, deed('first'));
      await inside((tx) => recordAudit(tx, deed('second')));
      expect(await seal()).toBe(1);
    });
    expect(await seal()).toBe(1);
    expect(await inside(verifyAudit)).toMatchObject({ sealed: 2, broken: null });
  });

  it.each([
    ['one byte of the details', `UPDATE audit_entry SET details = '{"from": "open", "to": "pausee"}' WHERE id = $1`],
    [
      'one microsecond of the time',
      `UPDATE audit_entry SET happened_at = happened_at + interval '1 microsecond' WHERE id = $1`,
    ],
    ['one letter of the action', `UPDATE audit_entry SET action = 'Deed 2' WHERE id = $1`],
  ])('shows the entry of which somebody changed %s', async (_, tamper) => {
    for (let number = 1; number <= 4; number++) await inside((tx) => recordAudit(tx, deed(`deed ${String(number)}`)));
    await seal();
    const links: { id: string }[] = await inside((tx) =>
      tx.query('SELECT entry_id AS id FROM audit_seal ORDER BY sequence'),
    );
    const entryId = nth(links, 1).id;
    await db.admin.query(tamper, [entryId]);
    expect((await inside(verifyAudit)).broken).toEqual({ sequence: 2, entryId, problem: 'entry-changed' });
  });

  it('counts an entry whose note was taken away before its seal', async () => {
    for (const action of ['opened', 'paused']) await inside((tx) => recordAudit(tx, deed(action)));
    await inside((tx) => tx.query('DELETE FROM audit_unsealed WHERE id = (SELECT id FROM audit_unsealed LIMIT 1)'));
    expect(await seal()).toBe(1);
    expect(await inside(verifyAudit)).toMatchObject({ sealed: 1, unsealed: 1, lost: 1, broken: null });
  });

  it('shows where a seal was taken out or rewritten', async () => {
    for (let number = 1; number <= 4; number++) await inside((tx) => recordAudit(tx, deed(`deed ${String(number)}`)));
    await seal();
    const own = [practice.organisationId];
    await db.admin.query('UPDATE audit_seal SET previous_hash = hash WHERE organisation_id = $1 AND sequence = 3', own);
    expect((await inside(verifyAudit)).broken).toMatchObject({ sequence: 3, problem: 'chain-broken' });
    await db.admin.query('DELETE FROM audit_seal WHERE organisation_id = $1 AND sequence = 2', own);
    expect((await inside(verifyAudit)).broken).toMatchObject({ sequence: 3, problem: 'seal-missing' });
  });
});
