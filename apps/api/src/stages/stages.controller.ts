import { Body, Controller, Get, HttpCode, Param, Post, Put, Query, Res } from '@nestjs/common';
import {
  completeStage,
  overrideGate,
  previewPrescription,
  recordCapture,
  signPrescription,
  stateBearingScrew,
  viewStage,
  viewVerdictHistory,
  type Actor,
} from '@archwright/casework';
import {
  completeStage as completeBody,
  id as recordId,
  overrideGate as overrideBody,
  prescriptionPreviewQuery,
  recordCapture as captureBody,
  signPrescription as prescriptionBody,
  stateBearingScrew as screwBody,
  type CompleteStage,
  type OverrideGate,
  type PrescriptionPreview,
  type PrescriptionPreviewQuery,
  type RecordCapture,
  type SignPrescription,
  type StageView,
  type StateBearingScrew,
  type VerdictHistory,
} from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation, readInOrganisation, type Work } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** The work at the chair. Every change answers with the stage as it is then. */
@Roles('clinician')
@Controller('stages')
export class StagesController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Get(':id')
  async show(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<StageView> {
    const now = this.clock.now();
    return tagged(
      reply,
      await readInOrganisation(this.db, actor.organisationId, (tx) => viewStage(tx, actor, id, now)),
    );
  }

  @Get(':id/verdict-history')
  history(@CurrentActor() actor: Actor, @Param('id', { schema: recordId }) id: string): Promise<VerdictHistory> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => viewVerdictHistory(tx, actor, id));
  }

  /** What would be sent if it were signed now; nothing is signed. */
  @Get(':id/prescription-preview')
  previewPrescription(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Query({ schema: prescriptionPreviewQuery }) query: PrescriptionPreviewQuery,
  ): Promise<PrescriptionPreview> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => previewPrescription(tx, actor, id, query));
  }

  @Post(':id/captures')
  @HttpCode(200)
  capture(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: captureBody }) body: RecordCapture,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<StageView> {
    const now = this.clock.now();
    return this.changed(actor, id, reply, now, (tx) => recordCapture(tx, actor, id, { ...body, version }, now));
  }

  @Post(':id/overrides')
  @HttpCode(200)
  override(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: overrideBody }) body: OverrideGate,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<StageView> {
    const now = this.clock.now();
    return this.changed(actor, id, reply, now, (tx) => overrideGate(tx, actor, id, { ...body, version }, now));
  }

  @Post(':id/completion')
  @HttpCode(200)
  complete(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: completeBody }) body: CompleteStage,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<StageView> {
    const now = this.clock.now();
    return this.changed(actor, id, reply, now, (tx) => completeStage(tx, actor, id, { ...body, version }, now));
  }

  @Post(':id/prescription')
  @HttpCode(200)
  sign(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: prescriptionBody }) body: SignPrescription,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<StageView> {
    const now = this.clock.now();
    return this.changed(actor, id, reply, now, (tx) => signPrescription(tx, actor, id, { ...body, version }, now));
  }

  @Put(':id/bearing-screw')
  stateScrew(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: screwBody }) body: StateBearingScrew,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<StageView> {
    const now = this.clock.now();
    return this.changed(actor, id, reply, now, (tx) => stateBearingScrew(tx, actor, id, { ...body, version }, now));
  }

  /** Does the work and answers with the stage, in one transaction. */
  private async changed(
    actor: Actor,
    id: string,
    reply: FastifyReply,
    now: Date,
    work: Work<unknown>,
  ): Promise<StageView> {
    const view = await inOrganisation(this.db, actor.organisationId, async (tx) => {
      await work(tx);
      return viewStage(tx, actor, id, now);
    });
    return tagged(reply, view);
  }
}
