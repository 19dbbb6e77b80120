import { Body, Controller, Get, Param, Put, Res } from '@nestjs/common';
import { chooseTeeth, viewToothChoice, type Actor } from '@archwright/casework';
import {
  chooseTeeth as choiceBody,
  id as recordId,
  type ChooseTeeth,
  type ToothChoiceView,
} from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** Which teeth the patient of a stage is to have. */
@Roles('clinician')
@Controller('stages/:id/tooth-choice')
export class ToothChoicesController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Get()
  async show(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ToothChoiceView> {
    const { organisationId } = actor;
    return tagged(reply, await readInOrganisation(this.db, organisationId, (tx) => viewToothChoice(tx, actor, id)));
  }

  @Put()
  async choose(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: choiceBody }) body: ChooseTeeth,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ToothChoiceView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, async (tx) => {
      await chooseTeeth(tx, actor, id, { ...body, version }, now);
      return viewToothChoice(tx, actor, id);
    });
    return tagged(reply, view);
  }
}
