import type { ChangeUser } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { Clinic, Laboratory, Practitioner, UserAccount } from '@archwright/records';
import { In, IsNull, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { NotYoursError, RecordNotFoundError } from '../errors.js';
import { clinicScope } from '../patients/patient-access.js';

/** An account that would leave the practice without a way in, or that contradicts itself. */
export class UserRefusedError extends DomainError {
  constructor(problem: string, accepted: string) {
    super('casework.user-refused', `${problem} Accepted: ${accepted}.`, { accepted });
  }
}

/**
 * Whose accounts the actor looks after: an administrator everybody's; a manager those that reach no further than the
 * manager's own clinics, administrators left out. Whoever sets a password could sign in with it.
 */
export function looksAfter(actor: Actor, { role, clinicIds }: Pick<UserAccount, 'role' | 'clinicIds'>): boolean {
  const scope = clinicScope(actor);
  if (scope === null) return true;
  return role !== 'administrator' && clinicIds.every((id) => scope.includes(id));
}

/**
 * The account's row, locked against other changes.
 *
 * @throws {RecordNotFoundError} for an account unknown here or not the actor's to look after
 */
export async function lockUser(tx: EntityManager, actor: Actor, id: string): Promise<UserAccount> {
  const account = await tx.findOne(UserAccount, { where: { id }, lock: { mode: 'pessimistic_write' } });
  if (account === null || !looksAfter(actor, account)) throw new RecordNotFoundError('user', id);
  return account;
}

/** @throws {NotYoursError} for what only an administrator gives @throws {RecordNotFoundError} for a clinic not the actor's */
export async function requireGrantable(tx: EntityManager, actor: Actor, wanted: ChangeUser): Promise<void> {
  if (wanted.role === 'administrator' && actor.role !== 'administrator')
    throw new NotYoursError('An administrator is made by an administrator.');
  const scope = clinicScope(actor);
  const strange = wanted.clinicIds.find((id) => scope !== null && !scope.includes(id));
  if (strange !== undefined) throw new RecordNotFoundError('clinic', strange);
  await requireAll(tx, Clinic, 'clinic', wanted.clinicIds);
  await requireAll(tx, Laboratory, 'laboratory', wanted.laboratoryIds);
  await requireOwnCalendar(tx, wanted);
}

async function requireAll(
  tx: EntityManager,
  entity: typeof Clinic | typeof Laboratory,
  kind: string,
  ids: readonly string[],
): Promise<void> {
  const known = new Set((await tx.findBy(entity, { id: In([...ids]) })).map(({ id }) => id));
  const unknown = ids.find((id) => !known.has(id));
  if (unknown !== undefined) throw new RecordNotFoundError(kind, unknown);
}

/** A clinician is a person with a calendar of their own, and nobody else is. */
async function requireOwnCalendar(tx: EntityManager, { role, practitionerId }: ChangeUser): Promise<void> {
  if (role !== 'clinician') {
    if (practitionerId === null) return;
    throw new UserRefusedError(
      `Somebody in the role "${role}" has no calendar of visits.`,
      'none, or the role clinician',
    );
  }
  const isClinician =
    practitionerId !== null && (await tx.existsBy(Practitioner, { id: practitionerId, role: 'clinician' }));
  if (!isClinician)
    throw new UserRefusedError('A clinician signs in for a calendar of their own.', 'a clinician of the set-up');
}

/** @throws {UserRefusedError} when nobody could look after the practice any more */
export async function requireAnotherAdministrator(tx: EntityManager, leaving: UserAccount): Promise<void> {
  if (leaving.role !== 'administrator' || leaving.disabledAt !== null) return;
  // All of them, so that two that leave at once see each other.
  const all = await tx.find(UserAccount, {
    where: { role: 'administrator', disabledAt: IsNull() },
    order: { id: 'ASC' },
    lock: { mode: 'pessimistic_write' },
  });
  if (all.some(({ id }) => id !== leaving.id)) return;
  throw new UserRefusedError('This is the last administrator.', 'another administrator first');
}
