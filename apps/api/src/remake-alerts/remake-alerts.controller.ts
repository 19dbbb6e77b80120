import { Body, Controller, Get, HttpCode, Param, Post, Query, Res } from '@nestjs/common';
import {
  IdempotencyKeys,
  acceptProposal,
  dismissAlert,
  listAlerts,
  openAlertByPerson,
  renewProposal,
  viewAlert,
  type Actor,
} from '@archwright/casework';
import {
  acceptProposal as acceptBody,
  alertQuery,
  dismissAlert as dismissBody,
  id as recordId,
  openRemakeAlert,
  type AcceptProposal,
  type AlertPage,
  type AlertQuery,
  type DismissAlert,
  type OpenRemakeAlert,
  type RemakeAlertView,
} from '@archwright/contracts';
import { Clock, Idempotent, IfMatch, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { renewWhenStale } from '../renew-when-stale.js';
import { tagged } from '../tagged.js';

/** What has to be made again. */
@Controller('remake-alerts')
export class RemakeAlertsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('clinician', 'front-desk', 'lab', 'manager')
  @Get()
  list(@CurrentActor() actor: Actor, @Query({ schema: alertQuery }) query: AlertQuery): Promise<AlertPage> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => listAlerts(tx, actor, query));
  }

  @Roles('clinician', 'front-desk', 'lab', 'manager')
  @Get(':id')
  async show(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<RemakeAlertView> {
    return tagged(reply, await readInOrganisation(this.db, actor.organisationId, (tx) => viewAlert(tx, actor, id)));
  }

  @Roles('clinician', 'lab')
  @Post()
  async open(
    @CurrentActor() actor: Actor,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: openRemakeAlert }) body: OpenRemakeAlert,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<RemakeAlertView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'open-remake-alert', now);
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, async () => viewAlert(tx, actor, await openAlertByPerson(tx, actor, body, now))),
    );
    return tagged(reply, view);
  }

  @Roles('front-desk', 'clinician')
  @Post(':id/acceptance')
  @HttpCode(200)
  async accept(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: acceptBody }) body: AcceptProposal,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<RemakeAlertView> {
    const now = this.clock.now();
    const view = await renewWhenStale(
      () =>
        inOrganisation(this.db, actor.organisationId, async (tx) => {
          await acceptProposal(tx, actor, id, { ...body, version }, now);
          return viewAlert(tx, actor, id);
        }),
      () => inOrganisation(this.db, actor.organisationId, (tx) => renewProposal(tx, actor, id, now)),
    );
    return tagged(reply, view);
  }

  @Roles('clinician')
  @Post(':id/dismissal')
  @HttpCode(200)
  async dismiss(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: dismissBody }) body: DismissAlert,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<RemakeAlertView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, async (tx) => {
      await dismissAlert(tx, actor, id, { ...body, version }, now);
      return viewAlert(tx, actor, id);
    });
    return tagged(reply, view);
  }
}
