import { Body, Controller, Get, Put, Res } from '@nestjs/common';
import { changeMessageTexts, viewMessageTexts, type Actor } from '@archwright/casework';
import { changeMessageTexts as textsBody, type ChangeMessageTexts, type MessageTextsView } from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** What patients are written, in the practice's own words where it has any. */
@Controller('message-texts')
export class MessageTextsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('manager')
  @Get()
  async show(@CurrentActor() actor: Actor, @Res({ passthrough: true }) reply: FastifyReply): Promise<MessageTextsView> {
    return tagged(reply, await readInOrganisation(this.db, actor.organisationId, (tx) => viewMessageTexts(tx, actor)));
  }

  @Roles('manager')
  @Put()
  async change(
    @CurrentActor() actor: Actor,
    @IfMatch() version: number,
    @Body({ schema: textsBody }) body: ChangeMessageTexts,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<MessageTextsView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      changeMessageTexts(tx, actor, { ...body, version }, now),
    );
    return tagged(reply, view);
  }
}
