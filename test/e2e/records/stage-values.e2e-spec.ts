import { Measurement, StageValue, UserAccount, inOrganisation, uuidv7 } from '@archwright/records';
import { DataSource, type EntityManager } from 'typeorm';
import { migrations } from '../../../migrations/index.js';
import { writeMeasured } from '../../support/measured-patients.js';
import { openRecordsDatabase, type RecordsDatabase } from './records-database.js';
import { aPractice, type TestPractice } from './records-practice.js';

const LONG_MS = 60_000;

let db: RecordsDatabase;
let practice: TestPractice;
beforeAll(async () => {
  db = await openRecordsDatabase();
  practice = await aPractice(db.app);
}, LONG_MS);
afterAll(() => db.close());

const rows = <Result>(work: (tx: EntityManager) => Promise<Result>) =>
  inOrganisation(db.app, practice.organisationId, work);

/** Back to before there was such a table, and up again. */
async function migrateAgain(): Promise<void> {
  const source = new DataSource({ ...db.admin.options, entities: [], migrations, migrationsTransactionMode: 'each' });
  await source.initialize();
  try {
    const isThere = async () => (await source.query<unknown[]>(`SELECT to_regclass('stage_value') AS t`))[0];
    while ((((await isThere()) as { t: string | null }).t ?? null) !== null)
      await source.undoLastMigration({ transaction: 'each' });
    await source.runMigrations({ transaction: 'each' });
  } finally {
    await source.destroy();
  }
}

it(
  'takes over what was read before, one median per capture and subject, under the same key',
  async () => {
    const before = await rows(async (tx) => {
      const recordedBy = uuidv7();
      await tx.insert(UserAccount, {
        id: recordedBy,
        name: 'Somebody',
        locale: 'en',
        role: 'clinician',
        passwordHash: '$argon2id$none',
        clinicIds: [practice.clinicId],
        laboratoryIds: [],
      });
      const measured = { clinicId: practice.clinicId, recordedBy, unit: 'mm', from: new Date('2026-12-01T09:00:00Z') };
      const method = { posture: 'reclined', landmarks: 'nose-tip-chin' };
      const rest = { ...measured, code: 'vertical-dimension-at-rest', method, values: [66, 70], firstNumber: 1 };
      await writeMeasured(tx, rest);
      await writeMeasured(tx, { ...measured, code: 'interalar-width', method: null, values: [36], firstNumber: 10 });
      const [first] = await tx.findBy(Measurement, { valueNumber: 66 });
      if (first === undefined) throw new Error('It was just written.');
      const { captureId, stageId, code, unit, recordedAt } = first;
      const reading = { captureId, stageId, code, unit, method, recordedAt, recordedBy };
      for (const [index, valueNumber] of [67, 71].entries())
        await tx.insert(Measurement, { ...reading, id: uuidv7(), reading: index + 2, valueNumber });
      return tx.find(StageValue, { order: { subject: 'ASC', recordedAt: 'ASC' } });
    });
    await migrateAgain();
    const after = await rows((tx) => tx.find(StageValue, { order: { subject: 'ASC', recordedAt: 'ASC' } }));
    expect(after.map(({ value }) => value)).toEqual([36, 67, 70]);
    const known = ({ captureId, stageId, patientId, clinicId, recordedBy, subject, method }: StageValue) => ({
      captureId,
      stageId,
      patientId,
      clinicId,
      recordedBy,
      subject,
      method,
    });
    expect(after.map(known)).toEqual(before.map(known));
    expect(after[1]?.subject).toBe('vertical-dimension-at-rest/landmarks=nose-tip-chin/posture=reclined');
  },
  LONG_MS,
);
