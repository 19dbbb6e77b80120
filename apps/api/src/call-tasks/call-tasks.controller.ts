import { Body, Controller, Get, HttpCode, Param, Post, Res } from '@nestjs/common';
import { callListOf, recordCallAttempt, type Actor } from '@archwright/casework';
import { id as recordId, recordCall, type CallList, type CallTaskView, type RecordCall } from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

@Controller('call-tasks')
export class CallTasksController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('front-desk')
  @Get()
  list(@CurrentActor() actor: Actor): Promise<CallList> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => callListOf(tx, actor, this.clock.now()));
  }

  @Roles('front-desk')
  @Post(':id/attempts')
  @HttpCode(200)
  async record(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: recordCall }) { outcome }: RecordCall,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<CallTaskView> {
    const now = this.clock.now();
    const task = await inOrganisation(this.db, actor.organisationId, (tx) =>
      recordCallAttempt(tx, actor, id, { outcome, version }, now),
    );
    return tagged(reply, task);
  }
}
