import { Body, Controller, Get, Param, Post, Put, Query, Res } from '@nestjs/common';
import {
  IdempotencyKeys,
  changeCaseState,
  changeVisitPlace,
  listCases,
  listLabCases,
  openCase,
  previewCaseState,
  recordConsent,
  viewCase,
  viewCourse,
  viewLabCase,
  type Actor,
} from '@archwright/casework';
import {
  caseQuery,
  changeCaseState as changeCaseStateBody,
  id as recordId,
  openCase as openCaseBody,
  recordConsent as recordConsentBody,
  setVisitPlace,
  stateEffectsQuery,
  type CasePage,
  type CaseCourse,
  type CaseQuery,
  type CaseStateEffects,
  type CaseView,
  type ChangeCaseState,
  type LabCasePage,
  type LabCaseView,
  type OpenCase,
  type RecordConsent,
  type SetVisitPlace,
  type StateEffectsQuery,
} from '@archwright/contracts';
import { Clock, Idempotent, IfMatch, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

@Controller('cases')
export class CasesController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  /** A laboratory finds and sees cases by number, without identity. */
  @Roles('front-desk', 'clinician', 'manager', 'lab')
  @Get()
  list(@CurrentActor() actor: Actor, @Query({ schema: caseQuery }) query: CaseQuery): Promise<CasePage | LabCasePage> {
    const now = this.clock.now();
    return readInOrganisation<CasePage | LabCasePage>(this.db, actor.organisationId, (tx) =>
      actor.role === 'lab' ? listLabCases(tx, actor, query, now) : listCases(tx, actor, query, now),
    );
  }

  @Roles('front-desk', 'clinician', 'manager', 'lab')
  @Get(':id')
  async show(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<CaseView | LabCaseView> {
    const now = this.clock.now();
    const view = await readInOrganisation<CaseView | LabCaseView>(this.db, actor.organisationId, (tx) =>
      actor.role === 'lab' ? viewLabCase(tx, actor, id, now) : viewCase(tx, actor, id, now),
    );
    return tagged(reply, view);
  }

  /** First plan against what happened, measurements over the visits, tracings. */
  @Roles('clinician')
  @Get(':id/course')
  course(@CurrentActor() actor: Actor, @Param('id', { schema: recordId }) id: string): Promise<CaseCourse> {
    const now = this.clock.now();
    return readInOrganisation(this.db, actor.organisationId, (tx) => viewCourse(tx, actor, id, now));
  }

  @Roles('front-desk', 'clinician')
  @Post()
  async open(
    @CurrentActor() actor: Actor,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: openCaseBody }) body: OpenCase,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<CaseView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'open-case', now);
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => openCase(tx, actor, body, now)),
    );
    return tagged(reply, view);
  }

  @Roles('clinician')
  @Put(':id/consent')
  async consent(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) caseId: string,
    @IfMatch() version: number,
    @Body({ schema: recordConsentBody }) body: RecordConsent,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<CaseView> {
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      recordConsent(tx, actor, { caseId, version }, body, this.clock.now()),
    );
    return tagged(reply, view);
  }

  @Roles('front-desk', 'clinician')
  @Put(':id/visit-place')
  async changePlace(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) caseId: string,
    @IfMatch() version: number,
    @Body({ schema: setVisitPlace }) body: SetVisitPlace,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<CaseView> {
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      changeVisitPlace(tx, actor, { caseId, version }, body, this.clock.now()),
    );
    return tagged(reply, view);
  }

  /** What the change would do, before it is made. */
  @Roles('front-desk', 'clinician')
  @Get(':id/state-effects')
  effects(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) caseId: string,
    @Query({ schema: stateEffectsQuery }) query: StateEffectsQuery,
  ): Promise<CaseStateEffects> {
    const now = this.clock.now();
    return readInOrganisation(this.db, actor.organisationId, (tx) => previewCaseState(tx, actor, caseId, query, now));
  }

  @Roles('front-desk', 'clinician')
  @Put(':id/state')
  async changeState(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) caseId: string,
    @IfMatch() version: number,
    @Body({ schema: changeCaseStateBody }) body: ChangeCaseState,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<CaseView> {
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      changeCaseState(tx, actor, { caseId, version }, body, this.clock.now()),
    );
    return tagged(reply, view);
  }
}
