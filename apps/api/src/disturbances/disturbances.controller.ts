import { Body, Controller, Get, HttpCode, Param, Post, Query, Res } from '@nestjs/common';
import {
  IdempotencyKeys,
  acceptRepair,
  decideDisturbance,
  disturbanceSubjectsOf,
  enterDisturbance,
  listDisturbances,
  renewRepairs,
  viewDisturbance,
  type Actor,
} from '@archwright/casework';
import {
  acceptRepair as acceptBody,
  decideDisturbance as decideBody,
  disturbanceQuery,
  enterDisturbance as enterBody,
  id as recordId,
  type AcceptRepair,
  type DecideDisturbance,
  type DisturbancePage,
  type DisturbanceQuery,
  type DisturbanceSubjects,
  type DisturbanceView,
  type EnterDisturbance,
} from '@archwright/contracts';
import { Clock, Idempotent, IfMatch, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import type { EntityManager } from 'typeorm';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { renewWhenStale } from '../renew-when-stale.js';
import { tagged } from '../tagged.js';

/** What falls away, whom it falls on, and the plans that repair it. */
@Controller('disturbances')
@Roles('front-desk', 'manager')
export class DisturbancesController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Get()
  list(
    @CurrentActor() actor: Actor,
    @Query({ schema: disturbanceQuery }) query: DisturbanceQuery,
  ): Promise<DisturbancePage> {
    const now = this.clock.now();
    return readInOrganisation(this.db, actor.organisationId, (tx) => listDisturbances(tx, actor, query, now));
  }

  /** What the caller may say has fallen away. */
  @Get('subjects')
  subjects(@CurrentActor() actor: Actor): Promise<DisturbanceSubjects> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => disturbanceSubjectsOf(tx, actor));
  }

  @Get(':id')
  async show(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<DisturbanceView> {
    const now = this.clock.now();
    const read = (tx: EntityManager) => viewDisturbance(tx, actor, id, now);
    return tagged(reply, await readInOrganisation(this.db, actor.organisationId, read));
  }

  @Post()
  async enter(
    @CurrentActor() actor: Actor,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: enterBody }) body: EnterDisturbance,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<DisturbanceView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'enter-disturbance', now);
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, async () =>
        viewDisturbance(tx, actor, await enterDisturbance(tx, actor, body, now), now),
      ),
    );
    return tagged(reply, view);
  }

  @Roles('front-desk')
  @Post(':id/acceptance')
  @HttpCode(200)
  async accept(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: acceptBody }) body: AcceptRepair,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<DisturbanceView> {
    const now = this.clock.now();
    const view = await renewWhenStale(
      () =>
        inOrganisation(this.db, actor.organisationId, async (tx) => {
          await acceptRepair(tx, actor, id, { ...body, version }, now);
          return viewDisturbance(tx, actor, id, now);
        }),
      () => inOrganisation(this.db, actor.organisationId, (tx) => renewRepairs(tx, actor, id, now)),
    );
    return tagged(reply, view);
  }

  @Post(':id/decision')
  @HttpCode(200)
  async decide(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: decideBody }) body: DecideDisturbance,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<DisturbanceView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, async (tx) => {
      await decideDisturbance(tx, actor, id, { ...body, version }, now);
      return viewDisturbance(tx, actor, id, now);
    });
    return tagged(reply, view);
  }
}
