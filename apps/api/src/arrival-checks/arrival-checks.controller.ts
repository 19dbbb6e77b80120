import { Body, Controller, Get, HttpCode, Param, Post, Query, Res } from '@nestjs/common';
import { decideArrival, listArrivalChecks, viewArrivalCheck, type Actor } from '@archwright/casework';
import {
  arrivalCheckQuery,
  decideArrival as decideBody,
  id as recordId,
  type ArrivalCheckPage,
  type ArrivalCheckQuery,
  type ArrivalCheckView,
  type DecideArrival,
} from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** Work that should be there for a visit and is not. */
@Controller('arrival-checks')
export class ArrivalChecksController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('front-desk', 'clinician', 'lab', 'manager')
  @Get()
  list(
    @CurrentActor() actor: Actor,
    @Query({ schema: arrivalCheckQuery }) query: ArrivalCheckQuery,
  ): Promise<ArrivalCheckPage> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => listArrivalChecks(tx, actor, query));
  }

  @Roles('front-desk', 'clinician', 'lab', 'manager')
  @Get(':id')
  async show(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ArrivalCheckView> {
    const view = await readInOrganisation(this.db, actor.organisationId, (tx) => viewArrivalCheck(tx, actor, id));
    return tagged(reply, view);
  }

  @Roles('front-desk', 'clinician')
  @Post(':id/decision')
  @HttpCode(200)
  async decide(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: decideBody }) body: DecideArrival,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ArrivalCheckView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      decideArrival(tx, actor, id, { ...body, version }, now),
    );
    return tagged(reply, view);
  }
}
