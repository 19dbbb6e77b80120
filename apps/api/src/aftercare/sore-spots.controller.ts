import { Body, Controller, Put, Res } from '@nestjs/common';
import { decideReferral, recordHealing, type Actor } from '@archwright/casework';
import {
  decideReferral as decideReferralBody,
  recordHealing as recordHealingBody,
  type DecideReferral,
  type RecordHealing,
  type ReferralTaskView,
  type SoreSpotView,
} from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { IdParam } from '../id-param.js';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** How a sore spot ends: it heals, or it is decided whether to refer. */
@Controller()
@Roles('clinician')
export class SoreSpotsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Put('sore-spots/:id/healing')
  async heal(
    @CurrentActor() actor: Actor,
    @IdParam('sore spot') id: string,
    @IfMatch() version: number,
    @Body({ schema: recordHealingBody }) body: RecordHealing,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<SoreSpotView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      recordHealing(tx, actor, id, { ...body, version }, now),
    );
    return tagged(reply, view);
  }

  @Put('referral-tasks/:id/decision')
  async decide(
    @CurrentActor() actor: Actor,
    @IdParam('referral task') id: string,
    @IfMatch() version: number,
    @Body({ schema: decideReferralBody }) body: DecideReferral,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ReferralTaskView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      decideReferral(tx, actor, id, { ...body, version }, now),
    );
    return tagged(reply, view);
  }
}
