import type { ChangeOwnPassword } from '@archwright/contracts';
import { Directory, Session, UserAccount, inOrganisation, recordAudit } from '@archwright/records';
import argon2 from 'argon2';
import type { DataSource } from 'typeorm';
import { guessedBy, judgeGuess } from '../access/sign-in-attempts.js';
import { hashPassword } from '../access/sign-in.js';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { UserRefusedError } from './user-access.js';

/**
 * A person's own new password. Every session ends, this one as well: whoever else is signed in by the old one is out.
 * Whoever found a screen left open may guess here no more often than at the door.
 *
 * @param from network address of the person
 * @throws {UserRefusedError} when the present one is wrong
 * @throws {SignInBlockedError} after five failures in 15 minutes, those of signing in counted with them
 */
export async function changeOwnPassword(
  db: DataSource,
  actor: Actor,
  { current, next }: ChangeOwnPassword,
  from: string,
  now: Date,
): Promise<void> {
  const id = personOf(actor, 'A password belongs to a person.');
  const { signInName } = await db.getRepository(Directory).findOneByOrFail({ kind: 'sign-in', userId: id });
  const { passwordHash } = await inOrganisation(db, actor.organisationId, (tx) =>
    tx.findOneByOrFail(UserAccount, { id }),
  );
  const isRight = await judgeGuess(db, guessedBy(signInName ?? '', from), now, () =>
    argon2.verify(passwordHash, current),
  );
  if (!isRight) throw presentOneIsAnother();
  const newHash = await hashPassword(next);
  await inOrganisation(db, actor.organisationId, async (tx) => {
    const account = await tx.findOneOrFail(UserAccount, { where: { id }, lock: { mode: 'pessimistic_write' } });
    // It was changed while this one was looked at.
    if (account.passwordHash !== passwordHash) throw presentOneIsAnother();
    await tx.update(UserAccount, { id }, { passwordHash: newHash, version: account.version + 1 });
    await tx.delete(Session, { userId: id });
    const subject = { subjectKind: 'user', subjectId: id };
    await recordAudit(tx, { actorId: id, action: 'password-changed', ...subject, details: {}, at: now });
  });
}

const presentOneIsAnother = (): UserRefusedError =>
  new UserRefusedError('The present password is another one.', 'the password with which you signed in');
