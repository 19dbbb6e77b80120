import { Body, Controller, Get, Put, Res } from '@nestjs/common';
import { changePracticeRules, viewPracticeRules, type Actor } from '@archwright/casework';
import { practiceRules, type PracticeRules, type PracticeRulesView } from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** When and in which words patients are reminded, how long time is held, and how much screening points out. */
@Controller('practice-rules')
@Roles('manager')
export class PracticeRulesController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Get()
  async show(
    @CurrentActor() actor: Actor,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<PracticeRulesView> {
    const view = await readInOrganisation(this.db, actor.organisationId, (tx) => viewPracticeRules(tx, actor));
    return tagged(reply, view);
  }

  @Put()
  async change(
    @CurrentActor() actor: Actor,
    @IfMatch() version: number,
    @Body({ schema: practiceRules }) rules: PracticeRules,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<PracticeRulesView> {
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      changePracticeRules(tx, actor, { version, rules }, this.clock.now()),
    );
    return tagged(reply, view);
  }
}
