import { Body, Controller, Get, Put, Res } from '@nestjs/common';
import { changeToothList, viewToothList, type Actor } from '@archwright/casework';
import { changeToothList as listBody, type ChangeToothList, type ToothListView } from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** The practice's own words for shades, moulds and arrangements. */
@Controller('tooth-list')
export class ToothListController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('clinician', 'manager')
  @Get()
  async show(@CurrentActor() actor: Actor, @Res({ passthrough: true }) reply: FastifyReply): Promise<ToothListView> {
    return tagged(reply, await readInOrganisation(this.db, actor.organisationId, (tx) => viewToothList(tx, actor)));
  }

  @Roles('manager')
  @Put()
  async change(
    @CurrentActor() actor: Actor,
    @IfMatch() version: number,
    @Body({ schema: listBody }) body: ChangeToothList,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ToothListView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      changeToothList(tx, actor, { ...body, version }, now),
    );
    return tagged(reply, view);
  }
}
