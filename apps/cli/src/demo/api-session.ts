import { randomUUID } from 'node:crypto';
import type { Problem } from '@archwright/contracts';
import type { z } from 'zod';

/** An answer outside 2xx, with the service's own explanation. */
export class RefusedCall extends Error {
  constructor(
    readonly call: string,
    readonly status: number,
    readonly problem: Problem,
  ) {
    const fields = problem.errors?.map((error) => `${error.path}: ${error.problem}`).join('; ');
    super(`${call} was refused with ${String(status)}: ${problem.detail}${fields === undefined ? '' : ` (${fields})`}`);
  }
}

interface Call<Schema extends z.ZodType> {
  method: 'GET' | 'POST' | 'PUT' | 'DELETE';
  path: string;
  answer: Schema;
  body?: unknown;
  /** Version the change builds on, sent as `If-Match`. */
  version?: number;
  /** Calls the request off. */
  signal?: AbortSignal;
}

/** One signed-in person talking to the service over HTTP, as a browser would. */
export class ApiSession {
  private cookie = '';

  /** @param signal calls every request off */
  constructor(
    private readonly url: string,
    private readonly signal: AbortSignal | null = null,
  ) {}

  async signIn(signInName: string, password: string): Promise<void> {
    const response = await fetch(`${this.url}/api/v1/sessions`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'idempotency-key': randomUUID() },
      body: JSON.stringify({ signInName, password }),
      signal: this.signal,
    });
    if (!response.ok) await this.refuse('POST /sessions', response);
    this.cookie = response.headers
      .getSetCookie()
      .map((cookie) => cookie.split(';', 1)[0])
      .join('; ');
  }

  async call<Schema extends z.ZodType>(call: Call<Schema>): Promise<z.output<Schema>> {
    const headers: Record<string, string> = { cookie: this.cookie };
    if (call.body !== undefined) headers['content-type'] = 'application/json';
    if (call.method === 'POST') headers['idempotency-key'] = randomUUID();
    if (call.version !== undefined) headers['if-match'] = `"${String(call.version)}"`;
    const response = await fetch(`${this.url}/api/v1${call.path}`, {
      method: call.method,
      headers,
      ...(call.body === undefined ? {} : { body: JSON.stringify(call.body) }),
      signal: call.signal ?? this.signal,
    });
    if (!response.ok) await this.refuse(`${call.method} ${call.path}`, response);
    return call.answer.parse(response.status === 204 ? undefined : await response.json());
  }

  private async refuse(call: string, response: Response): Promise<never> {
    throw new RefusedCall(call, response.status, (await response.json()) as Problem);
  }
}
