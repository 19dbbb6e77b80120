import { createHmac, timingSafeEqual } from 'node:crypto';
import { LinkError } from './errors.js';

export type LinkPurpose = 'confirm' | 'ask-to-move' | 'instructions' | 'itinerary';

/** What a link opens, and for whom: it is followed without a session, so it names the organisation too. */
export interface LinkSubject {
  readonly organisationId: string;
  /** The appointment or the patient that the purpose speaks of. */
  readonly subjectId: string;
}

/**
 * A token for the end of a web address: what it opens, until when, and an HMAC-SHA256 over both. It tells whoever sees
 * the address nothing about the person but two ids.
 *
 * Mail scanners follow links, so following one must only show a page; the page's button does what the purpose says.
 *
 * @param secret 32 bytes or more, kept by the server
 * @throws {LinkError} when the secret is too short
 */
export function signLink(secret: string, purpose: LinkPurpose, subject: LinkSubject, expiresAtMs: number): string {
  const payload = [purpose, subject.organisationId, subject.subjectId, expiresAtMs.toString(36)].join('~');
  const body = Buffer.from(payload).toString('base64url');
  return `${body}.${macOf(secret, body).toString('base64url')}`;
}

/** @throws {LinkError} when the token was not made with this secret, serves another purpose, or is past its time */
export function verifyLink(secret: string, purpose: LinkPurpose, token: string, nowMs: number): LinkSubject {
  const [body = '', mac = ''] = token.split('.');
  const expected = macOf(secret, body);
  const given = Buffer.from(mac, 'base64url');
  if (given.length !== expected.length || !timingSafeEqual(given, expected)) {
    throw new LinkError('forged', 'This link was not made here or is not complete. Copy it whole from the message.');
  }
  const [stated, organisationId = '', subjectId = '', expires = ''] = Buffer.from(body, 'base64url')
    .toString()
    .split('~');
  if (stated !== purpose) throw new LinkError('other-purpose', `This link does not serve "${purpose}".`);
  if (Number.parseInt(expires, 36) <= nowMs) {
    throw new LinkError(
      'expired',
      'This link is past its time. Use the one in the latest message, or call the practice.',
    );
  }
  return { organisationId, subjectId };
}

function macOf(secret: string, body: string): Buffer {
  if (Buffer.byteLength(secret) < 32)
    throw new LinkError('secret', 'The link secret is too short. Accepted: 32 bytes or more.');
  // The prefix keeps a signature made here from serving anything else that shares the secret.
  return createHmac('sha256', secret).update(`archwright-link-1.${body}`).digest();
}
