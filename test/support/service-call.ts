import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import type { z } from 'zod';

interface Call<Schema extends z.ZodType> {
  readonly answer: Schema;
  readonly body?: unknown;
}

/** Asks the service in the name of the person at the screen, to prepare what a test needs; refusals end the test. */
export async function callService<Schema extends z.ZodType>(
  page: Page,
  call: string,
  { answer, body }: Call<Schema>,
): Promise<z.output<Schema>> {
  const [method = 'GET', path = ''] = call.split(' ');
  const response = await page.request.fetch(`/api/v1${path}`, {
    method,
    headers: { 'idempotency-key': randomUUID() },
    ...(body === undefined ? {} : { data: body }),
  });
  if (!response.ok()) throw new Error(`${call} was refused: ${await response.text()}`);
  return answer.parse(await response.json());
}
