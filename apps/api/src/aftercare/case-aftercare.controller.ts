import { Body, Controller, Get, Post, Res } from '@nestjs/common';
import { IdempotencyKeys, recordAdjustment, recordSoreSpot, viewAftercare, type Actor } from '@archwright/casework';
import {
  recordAdjustment as recordAdjustmentBody,
  recordSoreSpot as recordSoreSpotBody,
  type AdjustmentView,
  type AftercareView,
  type RecordAdjustment,
  type RecordSoreSpot,
  type SoreSpotView,
} from '@archwright/contracts';
import { Clock, Idempotent, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { IdParam } from '../id-param.js';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** What is seen and done on one case after its dentures are placed. */
@Controller('cases/:id')
export class CaseAftercareController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('clinician', 'front-desk', 'manager')
  @Get('aftercare')
  show(@CurrentActor() actor: Actor, @IdParam('case') caseId: string): Promise<AftercareView> {
    const now = this.clock.now();
    return readInOrganisation(this.db, actor.organisationId, (tx) => viewAftercare(tx, actor, caseId, now));
  }

  @Roles('clinician')
  @Post('sore-spots')
  async find(
    @CurrentActor() actor: Actor,
    @IdParam('case') caseId: string,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: recordSoreSpotBody }) body: RecordSoreSpot,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<SoreSpotView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'record-sore-spot', now);
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => recordSoreSpot(tx, actor, caseId, body, now)),
    );
    return tagged(reply, view);
  }

  @Roles('clinician')
  @Post('adjustments')
  adjust(
    @CurrentActor() actor: Actor,
    @IdParam('case') caseId: string,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: recordAdjustmentBody }) body: RecordAdjustment,
  ): Promise<AdjustmentView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'record-adjustment', now);
    return inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => recordAdjustment(tx, actor, caseId, body, now)),
    );
  }
}
