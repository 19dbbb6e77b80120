import { lookup as resolveName, type LookupAddress } from 'node:dns';
import http, { type IncomingMessage } from 'node:http';
import https from 'node:https';
import { isIP, type LookupFunction } from 'node:net';
import { isNativeError } from 'node:util/types';
import { DomainError } from '@archwright/kernel';
import { isPublicAddress } from './public-address.js';

/** Project defaults: far above one person's calendar, low enough to give up while somebody waits. */
const LIMITS = { bytes: 10_000_000, ms: 30_000, redirects: 3 };
const REDIRECTS = [301, 302, 303, 307, 308];

type Reason = 'scheme' | 'private' | 'redirects' | 'downgrade' | 'status' | 'encoding' | 'too-large' | 'failed';

/** A feed was not fetched. The message never repeats the address, which may hold the key to the calendar. */
export class FeedError extends DomainError {
  constructor(reason: Reason, message: string) {
    super(`cli.feed-${reason}`, message);
  }
}

export interface FeedOptions {
  /** Whether addresses inside a private network may be asked; then the caller vouches for the address. */
  readonly isPrivateAllowed: boolean;
  readonly limits?: typeof LIMITS;
}

/**
 * Fetches a calendar. The address of the server is judged where the connection is made, so that a name that changes its
 * mind in between, or a redirect, leads nowhere else.
 *
 * @throws {FeedError} with what would be accepted
 */
export async function fetchFeed(url: URL, { isPrivateAllowed, limits = LIMITS }: FeedOptions): Promise<string> {
  const signal = AbortSignal.timeout(limits.ms);
  let at = url;
  for (let redirects = 0; redirects <= limits.redirects; redirects++) {
    const answer = await ask(at, isPrivateAllowed, signal);
    const { statusCode = 0, headers } = answer;
    if (!REDIRECTS.includes(statusCode) || headers.location === undefined) return read(answer, limits.bytes);
    answer.destroy();
    const next = URL.canParse(headers.location, at.href) ? new URL(headers.location, at.href) : null;
    if (next === null) throw new FeedError('status', "The feed's server redirects to no address.");
    if (at.protocol === 'https:' && next.protocol !== 'https:') {
      throw new FeedError(
        'downgrade',
        "The feed's server redirects from https to an unprotected address. Accepted: https.",
      );
    }
    at = next;
  }
  const most = String(limits.redirects);
  throw new FeedError('redirects', `The feed's server redirects more than ${most} times. Give the final address.`);
}

function ask(url: URL, isPrivateAllowed: boolean, signal: AbortSignal): Promise<IncomingMessage> {
  if (url.protocol !== 'http:' && url.protocol !== 'https:') {
    throw new FeedError('scheme', 'The feed can only be fetched from an http or https address.');
  }
  const host = url.hostname.replace(/^\[|\]$/g, '');
  // An address that is written out is never looked up.
  if (!isPrivateAllowed && isIP(host) !== 0 && !isPublicAddress(host)) throw privateAddress();
  const request = url.protocol === 'https:' ? https.request : http.request;
  return new Promise((resolve, reject) => {
    request(url, {
      signal,
      agent: false,
      headers: { accept: 'text/calendar', 'accept-encoding': 'identity' },
      ...(isPrivateAllowed ? {} : { lookup: lookUpPublic }),
    })
      .once('response', resolve)
      .on('error', (error) => {
        reject(asFeedError(error));
      })
      .end();
  });
}

/** Resolves a name, and refuses it when any of its addresses is not public. */
const lookUpPublic: LookupFunction = (hostname, options, answer) => {
  resolveName(hostname, { ...options, all: true }, (error, addresses: LookupAddress[]) => {
    const [first] = (addresses as (LookupAddress | undefined)[] | undefined) ?? [];
    if (error !== null || first === undefined) answer(error ?? new Error('no address'), '', 0);
    else if (addresses.some(({ address }) => !isPublicAddress(address))) answer(privateAddress(), '', 0);
    else if (options.all === true) answer(null, addresses);
    else answer(null, first.address, first.family);
  });
};

async function read(answer: IncomingMessage, mostBytes: number): Promise<string> {
  try {
    const { statusCode, headers } = answer;
    if (statusCode !== 200) {
      throw new FeedError('status', `The feed's server answers ${String(statusCode)}. Accepted: 200 with a calendar.`);
    }
    if (![undefined, 'identity'].includes(headers['content-encoding'])) {
      throw new FeedError('encoding', "The feed's server sends a packed answer. Accepted: one that is not packed.");
    }
    const chunks: Buffer[] = [];
    let bytes = 0;
    for await (const chunk of answer as AsyncIterable<Buffer>) {
      bytes += chunk.length;
      if (bytes > mostBytes) {
        throw new FeedError('too-large', `The feed has more than ${String(mostBytes)} bytes. Export a shorter period.`);
      }
      chunks.push(chunk);
    }
    return new TextDecoder('utf-8').decode(Buffer.concat(chunks));
  } catch (error) {
    throw asFeedError(error);
  } finally {
    answer.destroy();
  }
}

function privateAddress(): FeedError {
  return new FeedError(
    'private',
    'The feed lies at an address inside a private network. Accepted: a public one, or --allow-private when you vouch for it.',
  );
}

/** Of a failed connection only its code is told: its words may hold the address. */
function asFeedError(error: unknown): FeedError {
  if (error instanceof FeedError) return error;
  if (!isNativeError(error)) throw error;
  const { name, code = name }: Error & { code?: unknown } = error;
  const reason = code === 'ABORT_ERR' || name === 'TimeoutError' ? 'no complete answer in time' : String(code);
  return new FeedError('failed', `The feed could not be fetched: ${reason}. Nothing was changed; try again later.`);
}
