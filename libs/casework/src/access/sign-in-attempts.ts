import { createHash } from 'node:crypto';
import { DomainError } from '@archwright/kernel';
import { SignInAttempt } from '@archwright/records';
import { In, type DataSource } from 'typeorm';

const WINDOW_MINUTES = 15;
const FAILURES_ALLOWED = 5;

export class SignInBlockedError extends DomainError {
  constructor(until: Date, now: Date) {
    super(
      'access.too-many',
      `Too many failed attempts. Try again after ${until.toISOString()}, or ask an administrator for a new password.`,
      { until: until.toISOString(), retryAfterSeconds: Math.ceil((until.getTime() - now.getTime()) / 1000) },
    );
  }
}

/** Failures are counted by digest, so that the table holds neither names nor addresses. */
const digest = (subject: string): string => createHash('sha256').update(subject).digest('base64url');

/** Whom a guess at a password counts against, wherever it is made: the account and the network address, each by itself. */
export const guessedBy = (signInName: string, address: string): readonly string[] => [
  `name:${signInName.toLowerCase()}`,
  `address:${address}`,
];

/**
 * Judges one guess at a password, of which five in 15 minutes may be wrong. In no transaction, so that a refusal which
 * rolls one back is counted all the same.
 *
 * @returns whether the guess was right
 * @throws {SignInBlockedError} when the failures are used up, whatever the guess
 */
export async function judgeGuess(
  db: DataSource,
  subjects: readonly string[],
  now: Date,
  isRight: () => Promise<boolean>,
): Promise<boolean> {
  await requireNotBlocked(db, subjects, now);
  if (!(await isRight())) {
    await countFailure(db, subjects, now);
    return false;
  }
  // Again, since others may have failed while this one was looked at: guessing many at once must win nothing.
  await requireNotBlocked(db, subjects, now);
  await db.getRepository(SignInAttempt).delete({ subjectHash: In(subjects.map(digest)) });
  return true;
}

/** @throws {SignInBlockedError} while any of the subjects is blocked */
async function requireNotBlocked(db: DataSource, subjects: readonly string[], now: Date): Promise<void> {
  const attempts = await db.getRepository(SignInAttempt).findBy({ subjectHash: In(subjects.map(digest)) });
  const blocked = attempts.find(({ blockedUntil }) => blockedUntil !== null && blockedUntil > now);
  if (blocked?.blockedUntil != null) throw new SignInBlockedError(blocked.blockedUntil, now);
}

/**
 * The count starts anew once the window since the first failure has passed.
 *
 * @throws {SignInBlockedError} when the subject had used up its failures already: of many attempts at once, which all
 * began before any had failed, no more learn that they were wrong than of attempts one after the other
 */
async function countFailure(db: DataSource, subjects: readonly string[], now: Date): Promise<void> {
  const windowStart = new Date(now.getTime() - WINDOW_MINUTES * 60_000);
  const blockedUntil = new Date(now.getTime() + WINDOW_MINUTES * 60_000);
  let most = 0;
  for (const subject of subjects.map(digest).sort()) {
    const [counted]: { failures: number }[] = await db.query(
      `INSERT INTO sign_in_attempt AS attempt (subject_hash, failures, first_failed_at) VALUES ($1, 1, $2)
       ON CONFLICT (subject_hash) DO UPDATE SET
         failures = CASE WHEN attempt.first_failed_at < $3 THEN 1 ELSE attempt.failures + 1 END,
         first_failed_at = CASE WHEN attempt.first_failed_at < $3 THEN $2 ELSE attempt.first_failed_at END,
         blocked_until = CASE WHEN attempt.first_failed_at >= $3 AND attempt.failures + 1 >= $4 THEN $5::timestamptz END
       RETURNING failures`,
      [subject, now, windowStart, FAILURES_ALLOWED, blockedUntil],
    );
    most = Math.max(most, counted?.failures ?? 0);
  }
  if (most > FAILURES_ALLOWED) throw new SignInBlockedError(blockedUntil, now);
}
