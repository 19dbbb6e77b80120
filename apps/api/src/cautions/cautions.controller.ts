import { Body, Controller, Get, Post, Put, Res } from '@nestjs/common';
import { IdempotencyKeys, endCaution, listCautions, recordCaution, type Actor } from '@archwright/casework';
import {
  endCaution as endCautionBody,
  recordCaution as recordCautionBody,
  type CautionList,
  type CautionView,
  type EndCaution,
  type RecordCaution,
} from '@archwright/contracts';
import { Clock, Idempotent, IfMatch, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { IdParam } from '../id-param.js';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** What to mind with a patient: for those who treat, not for the desk or the laboratory. */
@Controller()
@Roles('clinician')
export class CautionsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Get('patients/:id/cautions')
  list(@CurrentActor() actor: Actor, @IdParam('patient') patientId: string): Promise<CautionList> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => listCautions(tx, actor, patientId));
  }

  @Post('patients/:id/cautions')
  async record(
    @CurrentActor() actor: Actor,
    @IdParam('patient') patientId: string,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: recordCautionBody }) body: RecordCaution,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<CautionView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'record-caution', now);
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => recordCaution(tx, actor, patientId, body, now)),
    );
    return tagged(reply, view);
  }

  @Put('cautions/:id/end')
  async end(
    @CurrentActor() actor: Actor,
    @IdParam('caution') id: string,
    @IfMatch() version: number,
    @Body({ schema: endCautionBody }) body: EndCaution,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<CautionView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      endCaution(tx, actor, id, { ...body, version }, now),
    );
    return tagged(reply, view);
  }
}
