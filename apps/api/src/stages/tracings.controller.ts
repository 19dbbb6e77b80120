import { Controller, Get, Header, Param } from '@nestjs/common';
import { ApiProduces } from '@nestjs/swagger';
import { drawTracing, type Actor } from '@archwright/casework';
import { id as recordId, tracingNumber } from '@archwright/contracts';
import { readInOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';

/** Drawings of what was traced at a stage. */
@Roles('clinician')
@Controller('stages/:id/tracings')
export class TracingsController {
  constructor(private readonly db: DataSource) {}

  /** A drawing is a document of its own when it is opened alone: it may fetch, run and embed nothing. */
  @Get(':number/drawing')
  @ApiProduces('image/svg+xml')
  @Header('content-type', 'image/svg+xml; charset=utf-8')
  @Header('content-security-policy', "default-src 'none'; frame-ancestors 'none'; sandbox")
  // What is kept never changes; the next person at this browser is not to see it.
  @Header('cache-control', 'private, no-store')
  draw(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Param('number', { schema: tracingNumber }) number: number,
  ): Promise<string> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => drawTracing(tx, actor, id, number));
  }
}
