import { Body, Controller, Get, HttpCode, Param, Post, Query, Res } from '@nestjs/common';
import { decideTransfer, listTransfers, viewTransfer, type Actor } from '@archwright/casework';
import {
  decideTransfer as decideBody,
  id as recordId,
  transferQuery,
  type DecideTransfer,
  type TransferPage,
  type TransferQuery,
  type TransferView,
} from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** Cases on their way to another clinic. One is proposed by changing the case's state. */
@Controller('transfers')
export class TransfersController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('front-desk', 'clinician', 'manager')
  @Get()
  list(@CurrentActor() actor: Actor, @Query({ schema: transferQuery }) query: TransferQuery): Promise<TransferPage> {
    const now = this.clock.now();
    return readInOrganisation(this.db, actor.organisationId, (tx) => listTransfers(tx, actor, query, now));
  }

  @Roles('front-desk', 'clinician', 'manager')
  @Get(':id')
  async show(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<TransferView> {
    const now = this.clock.now();
    return tagged(
      reply,
      await readInOrganisation(this.db, actor.organisationId, (tx) => viewTransfer(tx, actor, id, now)),
    );
  }

  @Roles('front-desk', 'clinician')
  @Post(':id/decision')
  @HttpCode(200)
  async decide(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: decideBody }) body: DecideTransfer,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<TransferView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      decideTransfer(tx, actor, id, { ...body, version }, now),
    );
    return tagged(reply, view);
  }
}
