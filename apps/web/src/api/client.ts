import { problem } from '@archwright/contracts';
import type { z } from 'zod';
import { AnswerError, OfflineError, ProblemError } from './errors.js';
import { noteServerDate } from './server-clock.js';

type Query = Record<string, string | number | undefined>;

interface Call<Schema extends z.ZodType> {
  answer: Schema;
  query?: Query;
  body?: unknown;
  /** Version of the aggregate that is changed, sent as `If-Match`. */
  version?: number;
}

/**
 * Keys of creating calls that have not been answered yet. A repeated attempt with the same content
 * (a lost connection, a second press) carries the same key, so that the server does it once.
 */
const openKeys = new Map<string, string>();

/** Random key without `crypto.randomUUID`, which browsers withhold from pages served over plain HTTP on a local network. */
function newKey(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

function keyFor(attempt: string): string {
  const known = openKeys.get(attempt);
  if (known) return known;
  const key = newKey();
  openKeys.set(attempt, key);
  return key;
}

function address(path: string, query: Query = {}): string {
  const search = new URLSearchParams();
  for (const [name, value] of Object.entries(query)) {
    if (value !== undefined && value !== '') search.set(name, String(value));
  }
  const text = search.toString();
  return `/api/v1${path}${text ? `?${text}` : ''}`;
}

async function send(method: string, url: string, body: unknown, version: number | undefined): Promise<Response> {
  const headers: Record<string, string> = { accept: 'application/json, application/problem+json' };
  if (body !== undefined) headers['content-type'] = 'application/json';
  if (version !== undefined) headers['if-match'] = `"${String(version)}"`;
  const text = body === undefined ? undefined : JSON.stringify(body);
  const attempt = `${method} ${url} ${text ?? ''}`;
  if (method === 'POST') headers['idempotency-key'] = keyFor(attempt);
  try {
    const response = await fetch(url, {
      method,
      headers,
      credentials: 'same-origin',
      ...(text === undefined ? {} : { body: text }),
    });
    noteServerDate(response.headers.get('date'), Date.now());
    if (response.status < 500) openKeys.delete(attempt);
    return response;
  } catch {
    throw new OfflineError('The server cannot be reached.');
  }
}

async function refusal(response: Response): Promise<Error> {
  const text = await response.text();
  try {
    const parsed = problem.safeParse(JSON.parse(text));
    if (parsed.success) return new ProblemError(parsed.data);
  } catch {
    // Not JSON: something between us and the service answered, for example a proxy. Said below.
  }
  return new AnswerError(`The server answered ${String(response.status)} without saying why.`);
}

async function call<Schema extends z.ZodType>(
  method: string,
  path: string,
  options: Call<Schema>,
): Promise<z.output<Schema>> {
  const response = await send(method, address(path, options.query), options.body, options.version);
  if (!response.ok) throw await refusal(response);
  const json: unknown = response.status === 204 ? undefined : await response.json();
  const parsed = options.answer.safeParse(json);
  if (!parsed.success) {
    const first = parsed.error.issues[0];
    throw new AnswerError(
      `The answer to ${path} is not as agreed: ${first?.path.join('.') ?? ''} ${first?.message ?? ''}`,
    );
  }
  return parsed.data;
}

export const read = <Schema extends z.ZodType>(
  path: string,
  answer: Schema,
  query?: Query,
): Promise<z.output<Schema>> => call('GET', path, { answer, ...(query ? { query } : {}) });

export const post = <Schema extends z.ZodType>(
  path: string,
  answer: Schema,
  body: unknown,
  version?: number,
): Promise<z.output<Schema>> => call('POST', path, { answer, body, ...(version === undefined ? {} : { version }) });

export const put = <Schema extends z.ZodType>(
  path: string,
  answer: Schema,
  body: unknown,
  version?: number,
): Promise<z.output<Schema>> => call('PUT', path, { answer, body, ...(version === undefined ? {} : { version }) });

export const remove = <Schema extends z.ZodType>(path: string, answer: Schema): Promise<z.output<Schema>> =>
  call('DELETE', path, { answer });
