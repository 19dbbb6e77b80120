import type { INestApplication } from '@nestjs/common';
import { ModulesContainer } from '@nestjs/core';
import { ApiHeader } from '@nestjs/swagger';
import { wantedHeader } from '@archwright/platform';

const DESCRIPTIONS: Readonly<Record<string, string>> = {
  'If-Match':
    'The ETag of the answer that the change is based on, such as "3". Without it 428, after another change 412.',
  'Idempotency-Key':
    'New for each intent, 8 to 200 printable characters. A repeat under the same key gets the first answer; without it 400, with another body 422.',
};

/** Lets the description name the header of every route that refuses to work without one. */
export function describeWantedHeaders(app: INestApplication): void {
  for (const { controllers } of app.get(ModulesContainer).values()) {
    for (const { metatype } of controllers.values()) {
      const prototype = metatype?.prototype as object | undefined;
      if (prototype !== undefined) describeController(prototype);
    }
  }
}

function describeController(prototype: object): void {
  for (const [method, descriptor] of Object.entries(Object.getOwnPropertyDescriptors(prototype))) {
    const name = wantedHeader(prototype, method);
    if (name === undefined) continue;
    ApiHeader({ name, required: true, description: DESCRIPTIONS[name] ?? '' })(prototype, method, descriptor);
  }
}
