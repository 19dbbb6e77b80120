import { z } from 'zod';

const parameter = z.object({ name: z.string(), in: z.string(), required: z.boolean().optional() });
const description = z.object({
  paths: z.record(z.string(), z.record(z.string(), z.object({ parameters: z.array(parameter).default([]) }))),
});

/** One route as the API's own description tells it. */
export interface Operation {
  /** Such as `POST /cases/{id}/holds`. */
  readonly name: string;
  readonly method: string;
  readonly path: string;
  /** Headers without which it refuses to work. */
  readonly wantedHeaders: readonly string[];
}

/** Every route below `/api/v1` that the service describes. */
export async function readOperations(apiUrl: string): Promise<Operation[]> {
  const answer = await fetch(new URL('/api/openapi.json', apiUrl));
  const { paths } = description.parse(await answer.json());
  return Object.entries(paths).flatMap(([whole, methods]) => {
    if (!whole.startsWith('/api/v1')) return [];
    const path = whole.slice('/api/v1'.length);
    return Object.entries(methods).map(([verb, { parameters }]) => {
      const method = verb.toUpperCase();
      const wantedHeaders = parameters.filter((each) => each.in === 'header' && each.required).map(({ name }) => name);
      return { name: `${method} ${path}`, method, path, wantedHeaders };
    });
  });
}
