import type { INestApplication } from '@nestjs/common';
import { DocumentBuilder, SwaggerModule, type OpenAPIObject } from '@nestjs/swagger';
import { z } from 'zod';
import { describeWantedHeaders } from './wanted-headers.js';

const VERSION = '1.0.0';

/** The description of every route, as OpenAPI 3.1; its schemas are the contracts' own, in JSON Schema 2020-12. */
export function openapiDocument(app: INestApplication): OpenAPIObject {
  const base = new DocumentBuilder()
    .setTitle('Archwright')
    .setDescription('Complete-denture visits, the laboratory work between them, and the checks on both.')
    .setVersion(VERSION)
    .setOpenAPIVersion('3.1.0')
    .addCookieAuth('__Host-archwright')
    .build();
  describeWantedHeaders(app);
  return SwaggerModule.createDocument(app, base, {
    // Left alone, the framework asks a schema for its OpenAPI 3.0 form, where a bound may be a boolean.
    standardSchemaConverter: (schema, { schemaType }) => jsonSchemaOf(schema, schemaType),
  });
}

function jsonSchemaOf(schema: unknown, io: 'input' | 'output') {
  if (!(schema instanceof z.ZodType)) return undefined;
  const converted = z.toJSONSchema(schema, { target: 'draft-2020-12', io, unrepresentable: 'any' });
  const { $defs: components = {}, ...whole } = converted;
  // The dialect is the document's, not each schema's.
  const inner = Object.fromEntries(Object.entries(whole).filter(([word]) => word !== '$schema'));
  return { schema: inner, components };
}
