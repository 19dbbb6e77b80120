import type { ObjectView, RegisterObject } from '@archwright/contracts';
import { RequestInvalidError } from '@archwright/platform';
import { Clinic, CustodyObject, Laboratory, uuidv7, type TreatmentCase } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { requireCase } from '../cases/case-access.js';
import { noteObject } from './note-object.js';
import { viewObject } from './object-view.js';

/**
 * Keeps something from now on, under a code of ours: what the patient brings, a tray, a cast that no stage of the path
 * makes. It is with the person's own clinic or laboratory.
 *
 * @throws {RequestInvalidError} when none, both, or somebody else's place is named
 */
export async function registerObject(
  tx: EntityManager,
  actor: Actor,
  { caseId, kind, arch, round, clinicId, laboratoryId, place, useBy }: RegisterObject,
  now: Date,
): Promise<ObjectView> {
  personOf(actor, 'An object is registered by the person who has it in hand.');
  const treatmentCase = await requireCase(tx, actor, caseId);
  await requireOwnPlace(tx, actor, { clinicId, laboratoryId });
  await tx.query('SELECT FROM treatment_case WHERE id = $1 FOR UPDATE', [caseId]);
  const object = {
    id: uuidv7(),
    caseId,
    code: await nextCode(tx, treatmentCase, [kind, arch ?? 'both', String(round)]),
    kind,
    arch,
    round,
    holder: clinicId === undefined ? ('laboratory' as const) : ('clinic' as const),
    clinicId: clinicId ?? null,
    laboratoryId: laboratoryId ?? null,
    place,
    useBy: useBy === null ? null : new Date(useBy),
    state: 'in-use' as const,
    createdAt: now,
  };
  await tx.insert(CustodyObject, object);
  await noteObject(
    tx,
    actor,
    object,
    { kind: 'object-registered', action: 'register-object', what: 'is kept from now on.' },
    now,
  );
  return viewObject(tx, actor, object.id, now);
}

async function requireOwnPlace(
  tx: EntityManager,
  { role, clinicIds, laboratoryIds }: Actor,
  { clinicId, laboratoryId }: Pick<RegisterObject, 'clinicId' | 'laboratoryId'>,
): Promise<void> {
  const isOne = (clinicId === undefined) !== (laboratoryId === undefined);
  const isOwn =
    role === 'administrator'
      ? await isThere(tx, { clinicId, laboratoryId })
      : role === 'lab'
        ? laboratoryIds.includes(laboratoryId ?? '')
        : clinicIds.includes(clinicId ?? '');
  if (isOne && isOwn) return;
  const path = role === 'lab' ? 'laboratoryId' : 'clinicId';
  throw new RequestInvalidError([{ path, problem: 'does not say who has it', accepted: 'one place, your own' }]);
}

/** An administrator is at home everywhere, as long as it is somewhere. */
function isThere(
  tx: EntityManager,
  { clinicId, laboratoryId }: Pick<RegisterObject, 'clinicId' | 'laboratoryId'>,
): Promise<boolean> {
  if (clinicId !== undefined) return tx.existsBy(Clinic, { id: clinicId });
  return laboratoryId === undefined ? Promise.resolve(false) : tx.existsBy(Laboratory, { id: laboratoryId });
}

/** Readable on a label, and once in the organisation; the case is locked meanwhile. */
async function nextCode(tx: EntityManager, { number }: TreatmentCase, parts: readonly string[]): Promise<string> {
  const stem = [number, ...parts].join('-');
  for (let copy = 1; ; copy++) {
    const code = copy === 1 ? stem : `${stem}-${String(copy)}`;
    if (!(await tx.existsBy(CustodyObject, { code }))) return code;
  }
}
