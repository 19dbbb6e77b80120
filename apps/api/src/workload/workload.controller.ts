import { Body, Controller, Get, HttpCode, Param, Post, Query, Res } from '@nestjs/common';
import {
  IdempotencyKeys,
  acceptWorkload,
  askForWorkload,
  cancelWorkload,
  viewWorkload,
  type Actor,
} from '@archwright/casework';
import {
  askWorkload,
  id as recordId,
  workloadQuery,
  type AskWorkload,
  type WorkloadQuery,
  type WorkloadRunView,
  type WorkloadView,
} from '@archwright/contracts';
import { Clock, Idempotent, IfMatch, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

@Controller('lab/workload')
export class WorkloadController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('lab', 'manager')
  @Get()
  show(@CurrentActor() actor: Actor, @Query({ schema: workloadQuery }) query: WorkloadQuery): Promise<WorkloadView> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => viewWorkload(tx, actor, query));
  }

  @Roles('lab')
  @Post('runs')
  async ask(
    @CurrentActor() actor: Actor,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: askWorkload }) body: AskWorkload,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<WorkloadRunView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'search-workload', now);
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => askForWorkload(tx, actor, body, now)),
    );
    return tagged(reply, view);
  }

  @Roles('lab')
  @Post('runs/:id/cancel')
  @HttpCode(200)
  async cancel(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<WorkloadRunView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      cancelWorkload(tx, actor, id, version, now),
    );
    return tagged(reply, view);
  }

  /** All of it or nothing: work that has changed since is answered with 409. */
  @Roles('lab')
  @Post('proposals/:id/accept')
  @HttpCode(200)
  async accept(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<WorkloadRunView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      acceptWorkload(tx, actor, id, version, now),
    );
    return tagged(reply, view);
  }
}
