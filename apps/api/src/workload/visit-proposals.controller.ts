import { Controller, Get, HttpCode, Param, Post, Res } from '@nestjs/common';
import { acceptVisits, listVisitProposals, type Actor } from '@archwright/casework';
import { id as recordId, type VisitProposal, type VisitProposals } from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** What laboratories propose that moves visits: for whoever calls the patients to accept. */
@Controller('visit-proposals')
export class VisitProposalsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('front-desk', 'manager')
  @Get()
  list(@CurrentActor() actor: Actor): Promise<VisitProposals> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => listVisitProposals(tx, actor));
  }

  /** All of it or nothing: a case that has changed since is answered with 409. */
  @Roles('front-desk')
  @Post(':id/acceptance')
  @HttpCode(200)
  async accept(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<VisitProposal> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) => acceptVisits(tx, actor, id, version, now));
    return tagged(reply, view);
  }
}
