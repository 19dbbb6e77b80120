import type { CautionList, CautionView, EndCaution, RecordCaution } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { PatientCaution, UserAccount, recordAudit, uuidv7 } from '@archwright/records';
import { In, IsNull, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { cautionText } from './caution-words.js';
import { lockPatient, requirePatient } from './patient-access.js';

/** @throws {RecordNotFoundError} for a patient unknown here or outside the actor's clinics */
export async function listCautions(tx: EntityManager, actor: Actor, patientId: string): Promise<CautionList> {
  await requirePatient(tx, actor, patientId);
  const rows = await tx.find(PatientCaution, { where: { patientId }, order: { recordedAt: 'DESC', id: 'DESC' } });
  const inForce = rows.filter(({ endedAt }) => endedAt === null);
  return { items: await toViews(tx, [...inForce, ...rows.filter(({ endedAt }) => endedAt !== null)]) };
}

/**
 * Notes what to mind with a patient; it is shown at every visit of every case from now on.
 *
 * @throws {WrongStateError} when the same allergy is in force already
 */
export async function recordCaution(
  tx: EntityManager,
  actor: Actor,
  patientId: string,
  body: RecordCaution,
  now: Date,
): Promise<CautionView> {
  const recordedBy = personOf(actor, 'A caution is recorded by a person.');
  await lockPatient(tx, actor, patientId);
  const material = body.kind === 'material-allergy' ? body.material : null;
  await requireNew(tx, patientId, material);
  const id = uuidv7();
  const { kind, note } = body;
  await tx.insert(PatientCaution, { id, patientId, kind, material, note, recordedBy, recordedAt: now });
  await audit(tx, recordedBy, 'caution-recorded', id, now);
  return viewCaution(tx, id);
}

async function requireNew(tx: EntityManager, patientId: string, material: string | null): Promise<void> {
  if (material === null || material === 'another') return;
  const known = await tx.existsBy(PatientCaution, { patientId, material, endedAt: IsNull() });
  if (known) throw new WrongStateError(`The allergy to ${material}`, 'on record', 'an allergy that is not');
}

/**
 * A caution that no longer holds, or was a mistake, is ended with the reason; it stays on record.
 *
 * @throws {WrongStateError} when it has ended before
 */
export async function endCaution(
  tx: EntityManager,
  actor: Actor,
  cautionId: string,
  { version, reason }: EndCaution & { version: number },
  now: Date,
): Promise<CautionView> {
  const endedBy = personOf(actor, 'A caution is ended by a person.');
  const seen = await tx.findOneBy(PatientCaution, { id: cautionId });
  if (seen === null) throw new RecordNotFoundError('caution', cautionId);
  await lockPatient(tx, actor, seen.patientId);
  const caution = await tx.findOneByOrFail(PatientCaution, { id: cautionId });
  requireVersion(version, caution.version);
  if (caution.endedAt !== null) throw new WrongStateError('This caution', 'ended', 'one in force');
  const ended = { endedAt: now, endedBy, endReason: reason, version: version + 1 };
  await tx.update(PatientCaution, { id: cautionId }, ended);
  await audit(tx, endedBy, 'caution-ended', cautionId, now);
  return viewCaution(tx, cautionId);
}

async function viewCaution(tx: EntityManager, id: string): Promise<CautionView> {
  const [view] = await toViews(tx, [await tx.findOneByOrFail(PatientCaution, { id })]);
  if (view === undefined) throw new Error('One caution has one view.');
  return view;
}

async function toViews(tx: EntityManager, rows: readonly PatientCaution[]): Promise<CautionView[]> {
  const people = await tx.findBy(UserAccount, { id: In(rows.map(({ recordedBy }) => recordedBy)) });
  return rows.map((row) => {
    const { id, version, patientId, kind, note, endReason } = row;
    return {
      ...{ id, version, patientId, kind, note, endReason },
      material: row.material as CautionView['material'], // only `recordCaution` writes it
      text: cautionText(row),
      recordedAt: row.recordedAt.toISOString(),
      recordedBy: people.find((each) => each.id === row.recordedBy)?.name ?? '',
      endedAt: row.endedAt?.toISOString() ?? null,
    };
  });
}

/** Without what was written down: health data stands in its own table only. */
function audit(tx: EntityManager, actorId: string, action: string, cautionId: string, at: Date): Promise<void> {
  const subject = { subjectKind: 'patient-caution', subjectId: cautionId };
  return recordAudit(tx, { actorId, action, ...subject, details: {}, at });
}
