import { Body, Controller, Get, HttpCode, Param, Post, Query, Res } from '@nestjs/common';
import {
  IdempotencyKeys,
  actOnLabStep,
  answerLabQuestion,
  dispatchOf,
  loadOf,
  openQuestionsOf,
  remakeLogOf,
  reportLateStep,
  stepsOfCase,
  viewLabStep,
  type Actor,
} from '@archwright/casework';
import {
  answerQuestion,
  caseStepsQuery,
  dispatchQuery,
  id as recordId,
  labStepAction,
  loadQuery,
  remakeLogQuery,
  reportLateStep as lateBody,
  type AnswerQuestion,
  type CaseSteps,
  type CaseStepsQuery,
  type DispatchQuery,
  type DispatchStep,
  type DispatchView,
  type LabStepAction,
  type LateStep,
  type LoadQuery,
  type LoadView,
  type OpenLabQuestions,
  type RemakeLog,
  type RemakeLogQuery,
  type ReportLateStep,
} from '@archwright/contracts';
import { Clock, Idempotent, IfMatch, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

@Controller('lab')
export class LabController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('lab', 'manager')
  @Get('load')
  load(@CurrentActor() actor: Actor, @Query({ schema: loadQuery }) query: LoadQuery): Promise<LoadView> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => loadOf(tx, actor, query, this.clock.now()));
  }

  @Roles('lab', 'manager')
  @Get('dispatch')
  dispatch(
    @CurrentActor() actor: Actor,
    @Query({ schema: dispatchQuery }) query: DispatchQuery,
  ): Promise<DispatchView> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => dispatchOf(tx, actor, query, this.clock.now()));
  }

  @Roles('lab', 'manager')
  @Get('steps')
  steps(
    @CurrentActor() actor: Actor,
    @Query({ schema: caseStepsQuery }) { caseId }: CaseStepsQuery,
  ): Promise<CaseSteps> {
    const now = this.clock.now();
    return readInOrganisation(this.db, actor.organisationId, (tx) => stepsOfCase(tx, actor, caseId, now));
  }

  @Roles('lab', 'manager')
  @Get('steps/:id')
  async show(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<DispatchStep> {
    const now = this.clock.now();
    return tagged(
      reply,
      await readInOrganisation(this.db, actor.organisationId, (tx) => viewLabStep(tx, actor, id, now)),
    );
  }

  @Roles('lab')
  @Post('steps/:id/actions')
  @HttpCode(200)
  async act(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: labStepAction }) body: LabStepAction,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<DispatchStep> {
    const now = this.clock.now();
    const step = await inOrganisation(this.db, actor.organisationId, (tx) =>
      actOnLabStep(tx, actor, id, { ...body, version }, now),
    );
    return tagged(reply, step);
  }

  /** Nothing moves by it; the clinic decides. */
  @Roles('lab')
  @Post('steps/:id/lateness')
  async late(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: lateBody }) body: ReportLateStep,
  ): Promise<LateStep> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'report-late-step', now);
    return inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => reportLateStep(tx, actor, id, body, now)),
    );
  }

  @Roles('lab', 'manager')
  @Get('remakes')
  remakes(@CurrentActor() actor: Actor, @Query({ schema: remakeLogQuery }) query: RemakeLogQuery): Promise<RemakeLog> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => remakeLogOf(tx, actor, query));
  }

  /** The front desk sees them too: after a day unanswered it is asked to see to them. */
  @Roles('clinician', 'front-desk', 'manager')
  @Get('questions')
  questions(@CurrentActor() actor: Actor): Promise<OpenLabQuestions> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => openQuestionsOf(tx, actor));
  }

  @Roles('clinician')
  @Post('questions/:id/answer')
  @HttpCode(204)
  async answer(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Body({ schema: answerQuestion }) { answer }: AnswerQuestion,
  ): Promise<void> {
    const now = this.clock.now();
    await inOrganisation(this.db, actor.organisationId, (tx) => answerLabQuestion(tx, actor, id, answer, now));
  }
}
