import { Body, Controller, Get, HttpCode, Param, Post, Query, Res } from '@nestjs/common';
import { IdempotencyKeys, actOnOrder, listOrders, sendOrder, viewOrder, type Actor } from '@archwright/casework';
import {
  id as recordId,
  labOrderAction,
  labOrderQuery,
  sendLabOrder,
  type LabOrderAction,
  type LabOrderPage,
  type LabOrderQuery,
  type LabOrderView,
  type SendLabOrder,
} from '@archwright/contracts';
import { Clock, Idempotent, IfMatch, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** Work ordered from a laboratory of its own; each side signs in to its own organisation. */
@Controller('lab-orders')
export class LabOrdersController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('front-desk', 'clinician', 'lab', 'manager')
  @Get()
  list(@CurrentActor() actor: Actor, @Query({ schema: labOrderQuery }) query: LabOrderQuery): Promise<LabOrderPage> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => listOrders(tx, actor, query));
  }

  @Roles('front-desk', 'clinician', 'lab', 'manager')
  @Get(':id')
  async show(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<LabOrderView> {
    return tagged(reply, await readInOrganisation(this.db, actor.organisationId, (tx) => viewOrder(tx, actor, id)));
  }

  @Roles('front-desk', 'clinician')
  @Post()
  async send(
    @CurrentActor() actor: Actor,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: sendLabOrder }) body: SendLabOrder,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<LabOrderView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'send-lab-order', now);
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => sendOrder(tx, actor, body, now)),
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
    @Body({ schema: labOrderAction }) body: LabOrderAction,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<LabOrderView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      actOnOrder(tx, actor, id, { ...body, version }, now),
    );
    return tagged(reply, view);
  }
}
