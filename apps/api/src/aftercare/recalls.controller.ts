import { Body, Controller, Get, Put, Query, Res } from '@nestjs/common';
import { decideRecall, listRecalls, type Actor } from '@archwright/casework';
import {
  decideRecall as decideRecallBody,
  recallQuery,
  type DecideRecall,
  type RecallPage,
  type RecallQuery,
  type RecallView,
} from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { IdParam } from '../id-param.js';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** Later checks, due but not booked: the desk's list of whom to call in. */
@Controller('recalls')
export class RecallsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('front-desk', 'clinician', 'manager')
  @Get()
  list(@CurrentActor() actor: Actor, @Query({ schema: recallQuery }) query: RecallQuery): Promise<RecallPage> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => listRecalls(tx, actor, query));
  }

  @Roles('front-desk', 'clinician')
  @Put(':id/decision')
  async decide(
    @CurrentActor() actor: Actor,
    @IdParam('recall') id: string,
    @IfMatch() version: number,
    @Body({ schema: decideRecallBody }) body: DecideRecall,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<RecallView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      decideRecall(tx, actor, id, { ...body, version }, now),
    );
    return tagged(reply, view);
  }
}
