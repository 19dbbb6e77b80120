import {
  Clinic,
  LabExchange,
  OrganisationIdError,
  Patient,
  inOrganisation,
  listOrganisations,
  readInOrganisation,
  uuidv7,
} from '@archwright/records';
import { aCase, aPractice, at, type TestPractice } from './records-practice.js';
import { openRecordsDatabase, type RecordsDatabase } from './records-database.js';

let db: RecordsDatabase;
let ours: TestPractice;
let theirs: TestPractice;
beforeAll(async () => {
  db = await openRecordsDatabase();
  ours = await aPractice(db.app);
  theirs = await aPractice(db.app);
}, 60_000);
afterAll(() => db.close());

describe('rows of an organisation', () => {
  it('are refused to a connection that names none, fresh or used before', async () => {
    const fresh = db.app.createQueryRunner();
    try {
      await fresh.connect();
      await expect(fresh.query('SELECT * FROM clinic')).rejects.toThrow(/app\.organisation_id|invalid input syntax/);
      // After a transaction-local setting the variable is empty, no longer unset.
      await fresh.startTransaction();
      await fresh.query(`SELECT set_config('app.organisation_id', $1, true)`, [ours.organisationId]);
      expect(await fresh.query('SELECT id FROM clinic')).toEqual([{ id: ours.clinicId }]);
      await fresh.commitTransaction();
      expect(await fresh.query(`SELECT current_setting('app.organisation_id') AS value`)).toEqual([{ value: '' }]);
      await expect(fresh.query('SELECT * FROM clinic')).rejects.toThrow(/invalid input syntax for type uuid/);
      await expect(
        fresh.query(`INSERT INTO clinic (id, name, zone, address) VALUES ($1, 'x', 'UTC', 'x')`, [uuidv7()]),
      ).rejects.toThrow(/invalid input syntax for type uuid/);
    } finally {
      await fresh.release();
    }
  });

  it('are seen, changed and deleted by nobody else', async () => {
    await inOrganisation(db.app, ours.organisationId, async (tx) => {
      expect(await tx.find(Clinic)).toMatchObject([{ id: ours.clinicId, organisationId: ours.organisationId }]);
      expect((await tx.update(Clinic, { id: theirs.clinicId }, { name: 'Taken over' })).affected).toBe(0);
      expect((await tx.delete(Clinic, { organisationId: theirs.organisationId })).affected).toBe(0);
    });
    const name = await inOrganisation(db.app, theirs.organisationId, (tx) =>
      tx.findOneByOrFail(Clinic, { id: theirs.clinicId }),
    );
    expect(name.name).toBe('Clinic');
  });

  it('can be written for nobody else, nor point at what is theirs', async () => {
    const clinic = { id: uuidv7(), organisationId: theirs.organisationId, name: 'x', zone: 'UTC', address: 'x' };
    await expect(inOrganisation(db.app, ours.organisationId, (tx) => tx.insert(Clinic, clinic))).rejects.toThrow(
      /row-level security/,
    );
    const foreign = { ...ours, clinicId: theirs.clinicId };
    await expect(inOrganisation(db.app, ours.organisationId, (tx) => aCase(tx, foreign))).rejects.toThrow(
      /foreign key/,
    );
    expect(await inOrganisation(db.app, ours.organisationId, (tx) => tx.count(Patient))).toBe(0);
  });

  it('are read at one instant, and not written, when only read', async () => {
    await readInOrganisation(db.app, ours.organisationId, async (tx) => {
      const before = await tx.count(Clinic);
      await inOrganisation(db.app, ours.organisationId, (other) =>
        other.insert(Clinic, { id: uuidv7(), name: 'Second', zone: 'UTC', address: 'x' }),
      );
      expect(await tx.count(Clinic)).toBe(before);
      await expect(tx.insert(Clinic, { id: uuidv7(), name: 'Third', zone: 'UTC', address: 'x' })).rejects.toThrow(
        /read-only/,
      );
    });
  });
});

describe('an organisation', () => {
  it('is named by a UUID or refused before the database is asked', async () => {
    await expect(inOrganisation(db.app, `${ours.organisationId}'`, (tx) => tx.find(Clinic))).rejects.toThrow(
      OrganisationIdError,
    );
  });

  it('is listed for sweeps', async () => {
    expect(await listOrganisations(db.app)).toEqual([ours.organisationId, theirs.organisationId].sort());
  });
});

describe('a transaction that the server ended for another', () => {
  it('is done again, five times at the most', async () => {
    let attempts = 0;
    const fail = (times: number) =>
      inOrganisation(db.app, ours.organisationId, async (tx) => {
        attempts++;
        if (attempts <= times) await tx.query(`DO $$ BEGIN RAISE EXCEPTION 'again' USING ERRCODE = '40P01'; END $$`);
        return attempts;
      });
    expect(await fail(4)).toBe(5);
    attempts = 0;
    await expect(fail(5)).rejects.toThrow('again');
    expect(attempts).toBe(5);
  });
});

describe('an order to an independent laboratory', () => {
  it('is seen by both parties, written by the practice, and unknown to a third', async () => {
    const third = await aPractice(db.app);
    const order = {
      id: uuidv7(),
      practiceOrganisationId: ours.organisationId,
      laboratoryOrganisationId: theirs.organisationId,
      caseNumber: '27-0001',
      orderDocument: {},
      neededBy: at('12:00', 10),
      state: 'ordered' as const,
    };
    await expect(inOrganisation(db.app, theirs.organisationId, (tx) => tx.insert(LabExchange, order))).rejects.toThrow(
      /row-level security/,
    );
    await inOrganisation(db.app, ours.organisationId, (tx) => tx.insert(LabExchange, order));
    const accepted = await inOrganisation(db.app, theirs.organisationId, (tx) =>
      tx.update(LabExchange, { id: order.id }, { state: 'accepted', promisedAt: at('12:00', 9) }),
    );
    expect(accepted.affected).toBe(1);
    const seen = await inOrganisation(db.app, ours.organisationId, (tx) => tx.find(LabExchange));
    expect(seen).toMatchObject([{ state: 'accepted', promisedAt: at('12:00', 9) }]);
    expect(await inOrganisation(db.app, third.organisationId, (tx) => tx.find(LabExchange))).toEqual([]);
  });
});
