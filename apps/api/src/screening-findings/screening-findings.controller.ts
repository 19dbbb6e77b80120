import { Controller, Get, Param, Put, Query, Res } from '@nestjs/common';
import { listFindings, markSeen, type Actor } from '@archwright/casework';
import {
  id as recordId,
  screeningFindingQuery,
  type ScreeningFindingPage,
  type ScreeningFindingQuery,
  type ScreeningFindingView,
} from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** What stands out among measurements and remakes, for a person to look at. */
@Controller('screening-findings')
export class ScreeningFindingsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('clinician', 'manager')
  @Get()
  list(
    @CurrentActor() actor: Actor,
    @Query({ schema: screeningFindingQuery }) query: ScreeningFindingQuery,
  ): Promise<ScreeningFindingPage> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => listFindings(tx, actor, query));
  }

  @Roles('clinician', 'manager')
  @Put(':id/seen')
  async see(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ScreeningFindingView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) => markSeen(tx, actor, id, version, now));
    return tagged(reply, view);
  }
}
