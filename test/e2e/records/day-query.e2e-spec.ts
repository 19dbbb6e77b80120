import { Appointment, PatientIdentity, inOrganisation } from '@archwright/records';
import { Between, type EntityManager } from 'typeorm';
import { aPractice, at, type TestPractice } from './records-practice.js';
import { openRecordsDatabase, type RecordsDatabase } from './records-database.js';

const PATIENTS = 3000;

let db: RecordsDatabase;
let practice: TestPractice;
beforeAll(async () => {
  db = await openRecordsDatabase();
  practice = await aPractice(db.app);
  await inOrganisation(db.app, practice.organisationId, (tx) => fill(tx, practice));
  await db.admin.query('ANALYZE');
}, 60_000);
afterAll(() => db.close());

/** Enough rows that reading all of them would be the dearer plan. */
async function fill(tx: EntityManager, { clinicId, chairIds, clinicianIds }: TestPractice): Promise<void> {
  await tx.query(
    `CREATE TEMPORARY TABLE made ON COMMIT DROP AS SELECT gen_random_uuid() AS id, n FROM generate_series(1, ${String(PATIENTS)}) n`,
  );
  await tx.query(`INSERT INTO resource (id, kind, label) SELECT id, 'patient', 'patient' FROM made`);
  await tx.query(
    `INSERT INTO patient (id, zone, locale, accepted_clinic_ids, wishes) SELECT id, 'UTC', 'en', '{}', '{}' FROM made`,
  );
  await tx.query(
    `INSERT INTO patient_identity (id, patient_id, given_name, family_name, birth_on, search_key)
     SELECT gen_random_uuid(), id, 'A', 'B', '1940-01-01', md5(n::text) FROM made`,
  );
  await tx.query(
    `INSERT INTO appointment (id, patient_id, clinic_id, chair_id, clinician_id, starts_at, ends_at, state, uid)
     SELECT gen_random_uuid(), id, $1, $2, $3, t, t + interval '30 minutes', 'booked', gen_random_uuid()
     FROM made, LATERAL (SELECT TIMESTAMPTZ '2026-01-01 08:00Z' + n * interval '6 hours' AS t) AS at`,
    [clinicId, chairIds[0], clinicianIds[0]],
  );
}

async function plan(tx: EntityManager, sql: string, parameters: unknown[]): Promise<string> {
  const rows: { 'QUERY PLAN': string }[] = await tx.query(`EXPLAIN ${sql}`, parameters);
  return rows.map((row) => row['QUERY PLAN']).join('\n');
}

describe('under row-level security', () => {
  it('the day of a clinic is an index condition on organisation, clinic and start', async () => {
    await inOrganisation(db.app, practice.organisationId, async (tx) => {
      const day = tx
        .createQueryBuilder(Appointment, 'a')
        .where({ clinicId: practice.clinicId, startsAt: Between(at('00:00'), at('00:00', 1)) });
      expect(await day.getCount()).toBe(4);
      const text = await plan(tx, ...day.getQueryAndParameters());
      expect(text).toContain('appointment_by_clinic_day');
      expect(text).toMatch(/Index Cond: .*organisation_id = .*clinic_id = .*starts_at >= .*starts_at <= /);
      expect(text).not.toMatch(/Seq Scan/);
    });
  });

  it('the start of a name is an index condition, where LIKE would not be', async () => {
    await inOrganisation(db.app, practice.organisationId, async (tx) => {
      const sql = 'SELECT patient_id FROM patient_identity WHERE search_key >= $1 AND search_key < $2';
      expect(await plan(tx, sql, ['abc', 'abd'])).toMatch(
        /Index Cond: .*organisation_id = .*search_key >= .*search_key < /,
      );
      const like = await plan(tx, `SELECT patient_id FROM patient_identity WHERE search_key LIKE 'abc%'`, []);
      expect(like).not.toMatch(/Index Cond: .*search_key/);
      expect(await tx.count(PatientIdentity)).toBe(PATIENTS);
    });
  });
});
