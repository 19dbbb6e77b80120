import { Body, Controller, Get, HttpCode, Param, Post, Query, Res } from '@nestjs/common';
import {
  IdempotencyKeys,
  actOnObject,
  declareObjectDisinfected,
  listObjects,
  registerObject,
  viewObject,
  type Actor,
} from '@archwright/casework';
import {
  declareDisinfection,
  id as recordId,
  objectAction,
  objectQuery,
  registerObject as registerBody,
  type DeclareDisinfection,
  type ObjectDeed,
  type ObjectPage,
  type ObjectQuery,
  type ObjectView,
  type RegisterObject,
} from '@archwright/contracts';
import { Clock, Idempotent, IfMatch, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** Things that change hands, by their code. */
@Controller('objects')
export class ObjectsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('front-desk', 'clinician', 'lab', 'manager')
  @Get()
  list(@CurrentActor() actor: Actor, @Query({ schema: objectQuery }) query: ObjectQuery): Promise<ObjectPage> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => listObjects(tx, actor, query, this.clock.now()));
  }

  @Roles('front-desk', 'clinician', 'lab', 'manager')
  @Get(':id')
  async show(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ObjectView> {
    const now = this.clock.now();
    return tagged(
      reply,
      await readInOrganisation(this.db, actor.organisationId, (tx) => viewObject(tx, actor, id, now)),
    );
  }

  @Roles('front-desk', 'clinician', 'lab')
  @Post()
  async register(
    @CurrentActor() actor: Actor,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: registerBody }) body: RegisterObject,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ObjectView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'register-object', now);
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => registerObject(tx, actor, body, now)),
    );
    return tagged(reply, view);
  }

  @Roles('front-desk', 'clinician', 'lab')
  @Post(':id/actions')
  @HttpCode(200)
  async act(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: objectAction }) body: ObjectDeed,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ObjectView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      actOnObject(tx, actor, id, { ...body, version }, now),
    );
    return tagged(reply, view);
  }

  @Roles('front-desk', 'clinician', 'lab')
  @Post(':id/disinfections')
  async declare(
    @CurrentActor() actor: Actor,
    @Idempotent() request: IdempotentRequest,
    @Param('id', { schema: recordId }) id: string,
    @Body({ schema: declareDisinfection }) body: DeclareDisinfection,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ObjectView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, `declare-disinfection ${id}`, now);
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => declareObjectDisinfected(tx, actor, id, body, now)),
    );
    return tagged(reply, view);
  }
}
