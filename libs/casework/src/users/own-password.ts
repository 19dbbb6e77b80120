import type { ChangeOwnPassword } from '@archwright/contracts';
import { Session, UserAccount, recordAudit } from '@archwright/records';
import argon2 from 'argon2';
import type { EntityManager } from 'typeorm';
import { hashPassword } from '../access/sign-in.js';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { UserRefusedError } from './user-access.js';

/**
 * A person's own new password. Every session ends, this one as well: whoever else is signed in by the old one is out.
 *
 * @throws {UserRefusedError} when the present one is wrong
 */
export async function changeOwnPassword(
  tx: EntityManager,
  actor: Actor,
  { current, next }: ChangeOwnPassword,
  now: Date,
): Promise<void> {
  const id = personOf(actor, 'A password belongs to a person.');
  const account = await tx.findOneOrFail(UserAccount, { where: { id }, lock: { mode: 'pessimistic_write' } });
  if (!(await argon2.verify(account.passwordHash, current)))
    throw new UserRefusedError('The present password is another one.', 'the password with which you signed in');
  await tx.update(UserAccount, { id }, { passwordHash: await hashPassword(next), version: account.version + 1 });
  await tx.delete(Session, { userId: id });
  const subject = { subjectKind: 'user', subjectId: id };
  await recordAudit(tx, { actorId: id, action: 'password-changed', ...subject, details: {}, at: now });
}
