import type { AddUser, ChangeUser, UserView } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { Organisation, Session, UserAccount, recordAudit, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { hashPassword } from '../access/sign-in.js';
import type { Actor } from '../actor.js';
import { UserRefusedError, lockUser, requireAnotherAdministrator, requireGrantable } from './user-access.js';
import { viewUser } from './user-views.js';

/**
 * Gives a person an account. Sign-in names are told apart over all organisations.
 *
 * @throws {UserRefusedError} when the name is taken, by whomever
 */
export async function addUser(tx: EntityManager, actor: Actor, body: AddUser, now: Date): Promise<UserView> {
  const { signInName, password, ...fields } = body;
  await requireGrantable(tx, actor, fields);
  const { locale } = await tx.findOneByOrFail(Organisation, { id: actor.organisationId });
  const id = uuidv7();
  await tx.insert(UserAccount, { ...fields, id, locale, passwordHash: await hashPassword(password), createdAt: now });
  const named: unknown[] = await tx.query(
    `INSERT INTO directory (id, kind, organisation_id, sign_in_name, user_id) VALUES ($1, 'sign-in', $2, $3, $4)
     ON CONFLICT (sign_in_name) DO NOTHING RETURNING id`,
    [uuidv7(), actor.organisationId, signInName, id],
  );
  if (named.length === 0) throw new UserRefusedError(`The sign-in name "${signInName}" is taken.`, 'another name');
  await audit(tx, actor, 'user-added', id, now, { role: fields.role });
  return viewUser(tx, id);
}

/** Changes what a person may do and where. Their sessions end when that becomes less or other than it was. */
export async function changeUser(
  tx: EntityManager,
  actor: Actor,
  { id, version, body }: { id: string; version: number; body: ChangeUser },
  now: Date,
): Promise<UserView> {
  const account = await lockUser(tx, actor, id);
  requireVersion(version, account.version);
  await requireGrantable(tx, actor, body);
  if (body.role !== account.role) {
    requireOther(actor, account, 'change the role of');
    await requireAnotherAdministrator(tx, account);
  }
  await tx.update(UserAccount, { id }, { ...body, version: version + 1 });
  if (isLess(account, body)) await tx.delete(Session, { userId: id });
  await audit(tx, actor, 'user-changed', id, now, { role: body.role });
  return viewUser(tx, id);
}

/** Ends an account with all its sessions, or lets the person in again. Nothing of what they did is touched. */
export async function setUserActive(
  tx: EntityManager,
  actor: Actor,
  { id, version, isActive }: { id: string; version: number; isActive: boolean },
  now: Date,
): Promise<UserView> {
  const account = await lockUser(tx, actor, id);
  requireVersion(version, account.version);
  if (!isActive) {
    requireOther(actor, account, 'end');
    await requireAnotherAdministrator(tx, account);
    await tx.delete(Session, { userId: id });
  }
  await tx.update(UserAccount, { id }, { disabledAt: isActive ? null : now, version: version + 1 });
  await audit(tx, actor, isActive ? 'user-let-in' : 'user-ended', id, now, {});
  return viewUser(tx, id);
}

/** For who has forgotten it. Every session of theirs ends, so that a stolen one ends too. */
export async function resetPassword(
  tx: EntityManager,
  actor: Actor,
  { id, version, password }: { id: string; version: number; password: string },
  now: Date,
): Promise<UserView> {
  const account = await lockUser(tx, actor, id);
  requireVersion(version, account.version);
  await tx.update(UserAccount, { id }, { passwordHash: await hashPassword(password), version: version + 1 });
  await tx.delete(Session, { userId: id });
  await audit(tx, actor, 'password-reset', id, now, {});
  return viewUser(tx, id);
}

/** Nobody locks themselves out by mistake. */
function requireOther(actor: Actor, { id }: UserAccount, what: string): void {
  if (actor.userId === id)
    throw new UserRefusedError(`You can't ${what} your own account.`, 'that somebody else does it');
}

type Reach = Pick<UserAccount, 'role' | 'clinicIds' | 'laboratoryIds' | 'practitionerId'>;

function isLess(before: Reach, after: Reach): boolean {
  const isOther = before.role !== after.role || before.practitionerId !== after.practitionerId;
  const kept = new Set([...after.clinicIds, ...after.laboratoryIds]);
  return isOther || [...before.clinicIds, ...before.laboratoryIds].some((id) => !kept.has(id));
}

function audit(
  tx: EntityManager,
  actor: Actor,
  action: string,
  subjectId: string,
  at: Date,
  details: Readonly<Record<string, unknown>>,
): Promise<void> {
  return recordAudit(tx, { actorId: actor.userId, action, subjectKind: 'user', subjectId, details, at });
}
