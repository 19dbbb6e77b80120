import { localDate, requireZone } from '@archwright/calendar';
import type { ImportPatientTable, ImportedPatientTable } from '@archwright/contracts';
import { readPatients, reasonInWords, rejectsCsv } from '@archwright/interop';
import { Organisation } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { importPatients } from './import-patients.js';

/** Reasons that are told at once; the file of rejects holds all of them. */
const TOLD = 200;

/**
 * Reads a table of patients and takes its good rows. The caller undoes all of it when the answer says that nothing is to
 * be written.
 *
 * @throws {PatientFileError} when the file as a whole can't be understood
 */
export async function importPatientTable(
  tx: EntityManager,
  actor: Actor,
  { contentBase64, isTrial, isStrict, isUpdating, ...reading }: ImportPatientTable,
  now: Date,
): Promise<ImportedPatientTable> {
  requireZone(reading.zone);
  const { locale } = await tx.findOneByOrFail(Organisation, { id: actor.organisationId });
  const today = localDate(now.getTime(), reading.zone);
  const file = readPatients(Buffer.from(contentBase64, 'base64'), { ...reading, locale, today });
  const { rejected: met, ...counts } = await importPatients(tx, actor, file.rows, { isUpdating }, now);
  const rejected = [...file.rejected, ...met].sort((one, other) => one.line - other.line);
  return {
    rows: file.rows.length + file.rejected.length,
    ...counts,
    isWritten: !isTrial && !(isStrict && rejected.length > 0),
    rejectedCount: rejected.length,
    rejected: rejected
      .slice(0, TOLD)
      .map(({ line, reasons }) => ({ line, reason: reasons.map(reasonInWords).join('; ') })),
    rejectsCsv: rejected.length === 0 ? null : rejectsCsv(file.header, rejected),
    ignoredColumns: [...file.ignoredColumns],
  };
}
