import { Body, Controller, Get, Header, Param, Post } from '@nestjs/common';
import { RouteConfig } from '@nestjs/platform-fastify';
import { ApiProduces } from '@nestjs/swagger';
import {
  IdempotencyKeys,
  keepPhotograph,
  listPhotographs,
  readPhotograph,
  removePhotograph,
  type Actor,
} from '@archwright/casework';
import {
  MOST_PHOTOGRAPH_BYTES,
  id as recordId,
  keepPhotograph as keepBody,
  removePhotograph as removeBody,
  type KeepPhotograph,
  type PhotographList,
  type PhotographView,
  type RemovePhotograph,
} from '@archwright/contracts';
import { Clock, Idempotent, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';

/** In base 64, with its caption. */
const PHOTOGRAPH_BODY_BYTES = Math.ceil((MOST_PHOTOGRAPH_BYTES * 4) / 3) + 2_000;

/** Photographs of a visit. They show a face: clinicians of the case see them, nobody else does. */
@Roles('clinician')
@Controller('stages/:id/photographs')
export class PhotographsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Get()
  list(@CurrentActor() actor: Actor, @Param('id', { schema: recordId }) id: string): Promise<PhotographList> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => listPhotographs(tx, actor, id));
  }

  @Post()
  @RouteConfig({ bodyLimit: PHOTOGRAPH_BODY_BYTES })
  keep(
    @CurrentActor() actor: Actor,
    @Idempotent() request: IdempotentRequest,
    @Param('id', { schema: recordId }) id: string,
    @Body({ schema: keepBody }) body: KeepPhotograph,
  ): Promise<PhotographView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, `keep-photograph ${id}`, now);
    return inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => keepPhotograph(tx, actor, id, body, now)),
    );
  }

  @Get(':photographId/picture')
  @ApiProduces('image/jpeg')
  @Header('content-type', 'image/jpeg')
  @Header('content-security-policy', "default-src 'none'; frame-ancestors 'none'; sandbox")
  // The next person at this browser is not to see it.
  @Header('cache-control', 'private, no-store')
  picture(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Param('photographId', { schema: recordId }) photographId: string,
  ): Promise<Buffer> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => readPhotograph(tx, actor, id, photographId));
  }

  @Post(':photographId/removal')
  remove(
    @CurrentActor() actor: Actor,
    @Idempotent() request: IdempotentRequest,
    @Param('id', { schema: recordId }) stageId: string,
    @Param('photographId', { schema: recordId }) photographId: string,
    @Body({ schema: removeBody }) body: RemovePhotograph,
  ): Promise<PhotographView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, `remove-photograph ${photographId}`, now);
    return inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => removePhotograph(tx, actor, { stageId, photographId }, body, now)),
    );
  }
}
