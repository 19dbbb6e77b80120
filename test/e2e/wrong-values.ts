import fc from 'fast-check';
import { z } from 'zod';

type JsonType = 'string' | 'number' | 'integer' | 'boolean' | 'null' | 'object' | 'array';

/** As much of JSON Schema as the description of the API uses. */
export interface Schema {
  readonly type?: JsonType | readonly JsonType[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly format?: string;
  readonly maxLength?: number;
  readonly maximum?: number;
  readonly minimum?: number;
}

/** A value that the schema does not take, and where in it the mistake is. */
export interface WrongValue {
  readonly path: string;
  readonly value: unknown;
}

// The document is our own, so that its schemas are taken for what they are.
const schema = z.custom<Schema>((value) => typeof value === 'object');
const parameter = z.object({ name: z.string(), in: z.string(), schema: schema.optional() });
const operation = z.object({
  parameters: z.array(parameter).default([]),
  requestBody: z.object({ content: z.object({ 'application/json': z.object({ schema }).optional() }) }).optional(),
});
const description = z.object({ paths: z.record(z.string(), z.record(z.string(), operation)) });

export interface Route {
  readonly name: string;
  readonly method: string;
  /** With `{id}` where an id belongs. */
  readonly path: string;
  readonly body: Schema | null;
  readonly query: Readonly<Record<string, Schema>>;
}

/** The routes of an OpenAPI document. */
export function routesOf(document: unknown): Route[] {
  return Object.entries(description.parse(document).paths).flatMap(([path, operations]) =>
    Object.entries(operations).map(([verb, { parameters, requestBody }]) => ({
      name: `${verb.toUpperCase()} ${path}`,
      method: verb.toUpperCase(),
      path,
      body: requestBody?.content['application/json']?.schema ?? null,
      query: Object.fromEntries(
        parameters.filter((each) => each.in === 'query').map((each) => [each.name, each.schema ?? {}]),
      ),
    })),
  );
}

/** Values with one mistake each: in the value itself, or in a field or item of it; null when every value is right. */
export function wrongValues(schema: Schema): fc.Arbitrary<WrongValue> | null {
  const below = (path: string, inner: Schema, wrap: (value: unknown) => unknown) =>
    wrongValues(inner)?.map((wrong) => ({
      path: wrong.path === '' ? path : `${path}.${wrong.path}`,
      value: wrap(wrong.value),
    }));
  const choices = [
    ...mistakes(schema).map((value) => value.map((wrong): WrongValue => ({ path: '', value: wrong }))),
    ...Object.entries(schema.properties ?? {}).map(([name, inner]) =>
      below(name, inner, (value) => ({ [name]: value })),
    ),
    schema.items === undefined ? undefined : below('0', schema.items, (value) => [value]),
  ].filter((choice) => choice !== undefined);
  return choices.length === 0 ? null : fc.oneof(...choices);
}

const ofType: Readonly<Record<Exclude<JsonType, 'integer'>, fc.Arbitrary<unknown>>> = {
  string: fc.string(),
  number: fc.double({ noNaN: true, noDefaultInfinity: true }),
  boolean: fc.boolean(),
  null: fc.constant(null),
  object: fc.dictionary(fc.constantFrom('__proto', 'constructor', 'a', ''), fc.jsonValue(), { maxKeys: 2 }),
  array: fc.array(fc.jsonValue(), { maxLength: 3 }),
};

/** Values of another type than the schema takes, outside its choices, its form or its bounds. */
function mistakes(schema: Schema): fc.Arbitrary<unknown>[] {
  const types = typesOf(schema);
  if (types.size === 0) return [];
  const isWhole = types.has('integer') && !types.has('number');
  const otherTypes = Object.entries(ofType)
    .filter(([type]) => !types.has(type as JsonType) && !(type === 'number' && types.has('integer')))
    .map(([, value]) => value);
  return [
    ...otherTypes,
    ...(isWhole ? [fc.integer({ min: -1000, max: 1000 }).map((whole) => whole + 0.5)] : []),
    ...(schema.enum === undefined && schema.format === undefined ? [] : [fc.string().map((text) => `no such ${text}`)]),
    ...(schema.maxLength === undefined ? [] : [fc.constant('x'.repeat(schema.maxLength + 1))]),
    ...(schema.maximum === undefined ? [] : [fc.constant(schema.maximum * 2 + 1)]),
    ...(schema.minimum === undefined
      ? []
      : [fc.constant(schema.minimum * 2 - 1)].filter(() => (schema.minimum ?? 0) <= 0)),
  ];
}

/** JSON types that a schema takes; none when it takes all. */
function typesOf({ type, anyOf, oneOf, enum: choices, const: only }: Schema): Set<JsonType> {
  if (type !== undefined) return new Set(typeof type === 'string' ? [type] : type);
  const alternatives = anyOf ?? oneOf;
  if (alternatives !== undefined) {
    const each = alternatives.map(typesOf);
    return each.some((types) => types.size === 0) ? new Set() : new Set(each.flatMap((types) => [...types]));
  }
  return new Set((choices ?? (only === undefined ? [] : [only])).map((value) => typeof value as JsonType));
}
