import { Body, Controller, Post } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import { FastifyAdapter } from '@nestjs/platform-fastify';
import { Module } from '@nestjs/common';
import { z } from 'zod';
import { openapiDocument } from './openapi-document.js';

const impression = z.strictObject({
  trayNumber: z.int().positive(),
  depthMm: z.number().gt(0).lt(80),
  note: z.string().nullable(),
  arch: z.enum(['upper', 'lower']),
});

@Controller('impressions')
class ImpressionsController {
  @Post()
  take(@Body({ schema: impression }) body: z.output<typeof impression>): number {
    return body.trayNumber;
  }
}

@Module({ controllers: [ImpressionsController] })
class ImpressionsModule {}

/** Every schema object below a value, however deep. */
function* objectsIn(value: unknown): Generator<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null) return;
  if (!Array.isArray(value)) yield value as Record<string, unknown>;
  for (const inner of Object.values(value)) yield* objectsIn(inner);
}

describe('the description of the API', () => {
  it('writes contracts in JSON Schema 2020-12, as OpenAPI 3.1 wants them', async () => {
    const app = await NestFactory.create(ImpressionsModule, new FastifyAdapter(), { logger: false });
    await app.init();
    const document = openapiDocument(app);
    await app.close();

    expect(document.openapi).toBe('3.1.0');
    const text = JSON.stringify(document);
    const [described] = [...objectsIn(document)].filter((schema) => 'trayNumber' in schema);
    // JSON Schema 2020-12, validation vocabulary 6.2.5: the value of exclusiveMinimum is a number (a boolean in OpenAPI 3.0).
    expect(described?.trayNumber).toMatchObject({ type: 'integer', exclusiveMinimum: 0 });
    expect(described?.depthMm).toMatchObject({ type: 'number', exclusiveMinimum: 0, exclusiveMaximum: 80 });
    // "nullable" is a word of OpenAPI 3.0 only; 3.1 says it by type.
    expect(text).not.toContain('"nullable"');
    expect(described?.note).toEqual({ type: ['string', 'null'] });
    for (const schema of objectsIn(document)) {
      expect(typeof (schema.exclusiveMinimum ?? 0)).toBe('number');
      expect(typeof (schema.exclusiveMaximum ?? 0)).toBe('number');
    }
  });
});
