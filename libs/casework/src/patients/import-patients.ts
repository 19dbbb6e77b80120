import type { CreatePatient } from '@archwright/contracts';
import { sameAsLine, titleOf, type ColumnField, type PatientRow, type RejectedRow } from '@archwright/interop';
import { Consent, PatientIdentity } from '@archwright/records';
import { IsNull, Not, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { enterPatients } from './enter-patients.js';
import { replacePatient } from './keep-patient.js';
import { knownPersons, personOf, type KnownPersons } from './known-persons.js';
import { patientBodyOf, type PatientRows } from './patient-rows.js';

/** Rows that are compared and written together; bounds the parameters of one statement. */
const ROWS_AT_ONCE = 500;
const ORIGIN = { action: 'patient-imported', wording: 'imported' } as const;
/** A key that the file gave, as against one made of name and birth date. */
const REFERENCE_KEY = /^id:/;

export interface ImportedPatients {
  readonly added: number;
  readonly updated: number;
  /** Already there, nothing to change. */
  readonly unchanged: number;
  readonly rejected: readonly RejectedRow[];
}

/**
 * Enters patients of a file. Somebody is already there when the file's reference says so, or else when name and birth
 * date are the same; of those, nothing changes unless `isUpdating`, and then only what the file speaks of. Imports of one
 * organisation wait for each other, and the same file again writes no row.
 */
export async function importPatients(
  tx: EntityManager,
  actor: Actor,
  rows: readonly PatientRow[],
  { isUpdating }: { readonly isUpdating: boolean },
  now: Date,
): Promise<ImportedPatients> {
  await tx.query(
    `SELECT pg_advisory_xact_lock(hashtextextended('patient-import/' || current_setting('app.organisation_id'), 0))`,
  );
  const seen = new SeenPersons();
  const sum = { added: 0, updated: 0, unchanged: 0, rejected: [] as RejectedRow[] };
  for (let from = 0; from < rows.length; from += ROWS_AT_ONCE) {
    const batch = rows.slice(from, from + ROWS_AT_ONCE);
    const known = await knownPersons(tx, batch);
    const added: PatientRow[] = [];
    for (const row of batch) {
      const candidates = candidatesFor(row, known);
      const firstLine = seen.lineOf(row, candidates);
      if (firstLine !== null) sum.rejected.push(sameAsLine(row, firstLine));
      else if (candidates.length > 1) sum.rejected.push(rejectedFor(row, ...SEVERAL));
      else {
        const [patient] = candidates;
        seen.add(row, patient);
        if (patient === undefined) added.push(row);
        else await meet(tx, actor, row, patient, isUpdating, now, sum);
      }
    }
    const entries = added.map(({ patient: body, key }) => ({ body, importKey: key }));
    if (entries.length > 0) await enterPatients(tx, actor, entries, ORIGIN, now);
    sum.added += entries.length;
  }
  return sum;
}

const SEVERAL = ['has the name and birth date of several patients', 'a reference that tells them apart'] as const;

function candidatesFor(row: PatientRow, known: KnownPersons): readonly PatientRows[] {
  const same = known.byImportKey.get(row.key);
  if (same !== undefined) return [same];
  const namesakes = known.byPerson.get(personOf(row.patient)) ?? [];
  if (!row.hasReference) return namesakes;
  // Another reference means another person; somebody without one may be the person whom the file means.
  return namesakes.filter(({ identity }) => !REFERENCE_KEY.test(identity.importKey ?? ''));
}

/** One row meets a patient who is already there. */
async function meet(
  tx: EntityManager,
  actor: Actor,
  row: PatientRow,
  met: PatientRows,
  isUpdating: boolean,
  now: Date,
  sum: { updated: number; unchanged: number; rejected: RejectedRow[] },
): Promise<void> {
  const { patient, identity } = met;
  const before = patientBodyOf(met);
  const changed: ColumnField[] = changedFields(row, before);
  const isAdopted = row.hasReference && identity.importKey !== row.key;
  if (isAdopted) changed.push('reference');
  if (changed.length === 0) {
    sum.unchanged += 1;
  } else if (!isUpdating) {
    const fields = changed.map(titleOf).join(', ');
    sum.rejected.push(rejectedFor(row, `differs from the patient who is already there: ${fields}`, NO_UPDATE));
  } else if (await revivesConsent(tx, patient.id, row, before)) {
    sum.rejected.push(rejectedFor(row, 'consents to reminders that the patient has withdrawn', DESK_ONLY));
  } else {
    const body = { ...before, ...given(row) };
    await replacePatient(tx, actor, patient, body, ORIGIN.wording, now);
    if (isAdopted) await tx.update(PatientIdentity, { patientId: patient.id }, { importKey: row.key });
    sum.updated += 1;
  }
}

const NO_UPDATE = 'the known values, or an import that may update';
const DESK_ONLY = 'a new consent, recorded where the patient gives it';

function given({ patient, given }: PatientRow): Partial<CreatePatient> {
  return Object.fromEntries(given.map((field) => [field, patient[field]]));
}

function changedFields(row: PatientRow, before: CreatePatient): (keyof CreatePatient & ColumnField)[] {
  const text = (value: unknown) => JSON.stringify(Array.isArray(value) ? [...new Set(value)].sort() : value);
  return row.given.filter(
    (field): field is keyof CreatePatient & ColumnField =>
      field !== 'wishes' && text(row.patient[field]) !== text(before[field]),
  );
}

/** A file may be older than what the patient said last. */
async function revivesConsent(
  tx: EntityManager,
  patientId: string,
  { patient, given }: PatientRow,
  before: CreatePatient,
): Promise<boolean> {
  if (!given.includes('reminderConsent')) return false;
  const withdrawn = await tx.findBy(Consent, { patientId, withdrawnAt: Not(IsNull()) });
  return withdrawn.some(
    ({ channel }) => patient.reminderConsent.includes(channel) && !before.reminderConsent.includes(channel),
  );
}

function rejectedFor({ line, cells }: PatientRow, problem: string, accepted: string): RejectedRow {
  return { line, cells, reasons: [{ column: '', problem, accepted }] };
}

/** Who stood in an earlier row of the same file: one person must not be written twice by one run. */
class SeenPersons {
  private readonly lineOfPatient = new Map<string, number>();
  private readonly lineOfNewPerson = new Map<string, { line: number; hasReference: boolean }>();

  lineOf(row: PatientRow, candidates: readonly PatientRows[]): number | null {
    const known = candidates.length === 1 ? this.lineOfPatient.get(candidates[0]?.patient.id ?? '') : undefined;
    if (known !== undefined) return known;
    const namesake = this.lineOfNewPerson.get(personOf(row.patient));
    // Two references are two persons, even of one name and birth date.
    return namesake === undefined || (row.hasReference && namesake.hasReference) ? null : namesake.line;
  }

  add(row: PatientRow, patient: PatientRows | undefined): void {
    if (patient !== undefined) this.lineOfPatient.set(patient.patient.id, row.line);
    else this.lineOfNewPerson.set(personOf(row.patient), row);
  }
}
