import { randomUUID } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import { z } from 'zod';
import { demoPassword } from '../../apps/cli/src/demo/scenario.js';

const AGAIN_AFTER_MS = 40;
const code = z.object({ code: z.string().optional() });

export interface Call {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly body?: unknown;
}

/** An answer that the service stands by from then on. */
export interface Acknowledged extends Call {
  readonly key: string;
  readonly status: number;
  readonly text: string;
}

/** A person at a screen who repeats each call, under its key, until the service answers it. */
export class StubbornClient {
  /** Every changing call that was answered with success. */
  readonly acknowledged: Acknowledged[] = [];
  /** Calls whose connection ended before the answer came. */
  cutOff = 0;
  /** Answers that asked to come again later. */
  putOff = 0;
  private cookie = '';

  constructor(private readonly url: string) {}

  async signIn(name: string): Promise<void> {
    const body = { signInName: `${name}@example.test`, password: demoPassword };
    const answer = await this.untilAnswered({ method: 'POST', path: '/sessions', body }, randomUUID());
    this.cookie = answer.headers
      .getSetCookie()
      .map((cookie) => cookie.split(';', 1)[0])
      .join('; ');
  }

  /** @returns status and text, success or refusal */
  async send(call: Call, key: string = randomUUID()): Promise<Acknowledged> {
    const answer = await this.untilAnswered(call, key);
    const whole = { ...call, key, status: answer.status, text: answer.text };
    if (call.method === 'POST' && answer.status < 300) this.acknowledged.push(whole);
    return whole;
  }

  /** @throws {Error} when the service refuses */
  async get<Schema extends z.ZodType>(call: Call, schema: Schema): Promise<z.output<Schema>> {
    const { status, text } = await this.send(call);
    if (status >= 300) throw new Error(`${call.method} ${call.path} was answered ${String(status)}: ${text}`);
    return schema.parse(JSON.parse(text));
  }

  private async untilAnswered(
    { method, path, body }: Call,
    key: string,
  ): Promise<{ status: number; text: string; headers: Headers }> {
    for (;;) {
      try {
        const response = await fetch(`${this.url}/api/v1${path}`, {
          method,
          headers: { cookie: this.cookie, 'content-type': 'application/json', 'idempotency-key': key },
          ...(body === undefined ? {} : { body: JSON.stringify(body) }),
        });
        const text = await response.text();
        if (!isForLater(response.status, text)) return { status: response.status, text, headers: response.headers };
        this.putOff++;
      } catch (error) {
        // Cut off or not listening: whether it happened is not known, so the same call follows.
        if (!isNobodyThere(error)) this.cutOff++;
      }
      await pause(AGAIN_AFTER_MS);
    }
  }
}

/** By its shape: the test runner's own `Error` is not the one that `fetch` throws. */
const isNobodyThere = (error: unknown): boolean =>
  (error as { cause?: { code?: string } } | null)?.cause?.code === 'ECONNREFUSED';

/** The service is away, or the first call of this key still runs in it. */
function isForLater(status: number, text: string): boolean {
  if (status === 503) return true;
  return status === 409 && code.parse(JSON.parse(text)).code === 'platform.idempotency-key-conflict';
}
