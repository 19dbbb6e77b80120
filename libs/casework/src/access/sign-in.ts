import { createHash, randomBytes } from 'node:crypto';
import type { SessionView, SignIn } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { Directory, Organisation, Session, UserAccount, inOrganisation, uuidv7 } from '@archwright/records';
import argon2 from 'argon2';
import type { DataSource, EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { guessedBy, judgeGuess } from './sign-in-attempts.js';

const SESSION_HOURS = 12;

/** Name or password is wrong; which one is not told. */
export class SignInRefusedError extends DomainError {
  constructor() {
    super('access.signed-out', 'This name and password do not belong together. Check both and try again.');
  }
}

export class SessionEndedError extends DomainError {
  constructor() {
    super('access.signed-out', 'You are not signed in, or the session has ended. Sign in again.');
  }
}

/** A person at a screen: who they are to the rules, and how a screen greets them. */
export interface SignedIn {
  readonly actor: Actor;
  readonly view: Omit<SessionView, 'isDemonstration'>;
}

/** Argon2id as the OWASP password storage sheet asks for at least (19 MiB, two passes, one lane). */
export function hashPassword(password: string): Promise<string> {
  return argon2.hash(password, { type: argon2.argon2id, memoryCost: 19_456, timeCost: 2, parallelism: 1 });
}

/** Verified for an unknown name as well, so that the time of the answer does not tell which names exist. */
let unknownNameHash: Promise<string> | undefined;

/**
 * @param from network address of the person, counted apart from the name
 * @returns the session and the token that the browser keeps; only its hash is stored
 * @throws {SignInRefusedError} {@link SignInBlockedError} after five failures in 15 minutes
 */
export async function signIn(
  db: DataSource,
  { signInName, password }: SignIn,
  from: string,
  now: Date,
): Promise<SignedIn & { token: string }> {
  const name = signInName.toLowerCase();
  const entry = await db.getRepository(Directory).findOneBy({ signInName: name });
  const account = entry?.userId == null ? null : await readAccount(db, entry.organisationId, entry.userId);
  unknownNameHash ??= hashPassword(randomBytes(16).toString('hex'));
  const hash = account?.passwordHash ?? (await unknownNameHash);
  const isRight = await judgeGuess(db, guessedBy(name, from), now, async () => {
    const isMatch = await argon2.verify(hash, password);
    return isMatch && account !== null;
  });
  if (!isRight || entry === null || account === null) throw new SignInRefusedError();
  return inOrganisation(db, entry.organisationId, async (tx) => {
    const secret = randomBytes(32).toString('base64url');
    await tx.insert(Session, {
      id: uuidv7(),
      userId: account.id,
      tokenHash: hashToken(secret),
      createdAt: now,
      lastSeenAt: now,
      expiresAt: new Date(now.getTime() + SESSION_HOURS * 3_600_000),
    });
    return { ...(await signedIn(tx, account)), token: `${entry.organisationId}.${secret}` };
  });
}

/** @throws {SessionEndedError} for a token that is unknown, expired or of a disabled account */
export async function resumeSession(db: DataSource, token: string, now: Date): Promise<SignedIn> {
  const { organisationId, tokenHash } = parseToken(token);
  return inOrganisation(db, organisationId, async (tx) => {
    const session = await tx.findOneBy(Session, { tokenHash });
    const account = session === null ? null : await tx.findOneBy(UserAccount, { id: session.userId });
    const isLive = session !== null && session.expiresAt > now && account?.disabledAt == null;
    if (!isLive || account === null) throw new SessionEndedError();
    return signedIn(tx, account);
  });
}

export async function endSession(db: DataSource, token: string): Promise<void> {
  const { organisationId, tokenHash } = parseToken(token);
  await inOrganisation(db, organisationId, (tx) => tx.delete(Session, { tokenHash }));
}

async function readAccount(db: DataSource, organisationId: string, userId: string): Promise<UserAccount | null> {
  const account = await inOrganisation(db, organisationId, (tx) => tx.findOneBy(UserAccount, { id: userId }));
  return account?.disabledAt == null ? account : null;
}

async function signedIn(tx: EntityManager, account: UserAccount): Promise<SignedIn> {
  const organisation = await tx.findOneByOrFail(Organisation, { id: account.organisationId });
  const { organisationId, role, clinicIds, laboratoryIds, practitionerId } = account;
  return {
    actor: { organisationId, userId: account.id, role, clinicIds, laboratoryIds, practitionerId },
    view: {
      userId: account.id,
      name: account.name,
      role,
      organisationId,
      organisationName: organisation.name,
      clinicIds,
      laboratoryIds,
      practitionerId,
      locale: account.locale,
    },
  };
}

function parseToken(token: string): { organisationId: string; tokenHash: string } {
  const [organisationId = '', secret = ''] = token.split('.');
  if (!/^[0-9a-f-]{36}$/.test(organisationId) || secret === '') throw new SessionEndedError();
  return { organisationId, tokenHash: hashToken(secret) };
}

function hashToken(secret: string): string {
  return createHash('sha256').update(secret).digest('base64url');
}
