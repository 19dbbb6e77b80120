import { Body, Controller, Get, HttpCode, Post, Query, Res } from '@nestjs/common';
import { Searches, actOnVisit, alternativesOf, dayBoardOf, viewAppointment, type Actor } from '@archwright/casework';
import {
  dayQuery,
  visitAction,
  type AlternativesView,
  type AppointmentView,
  type DayBoard,
  type DayQuery,
  type VisitAction,
} from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { IdParam } from '../id-param.js';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

@Controller('appointments')
export class AppointmentsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
    private readonly searches: Searches,
  ) {}

  @Roles('front-desk', 'clinician', 'manager')
  @Get()
  day(@CurrentActor() actor: Actor, @Query({ schema: dayQuery }) query: DayQuery): Promise<DayBoard> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => dayBoardOf(tx, actor, query, this.clock.now()));
  }

  @Roles('front-desk', 'clinician', 'manager')
  @Get(':id')
  async show(
    @CurrentActor() actor: Actor,
    @IdParam('appointment') appointmentId: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AppointmentView> {
    return tagged(
      reply,
      await readInOrganisation(this.db, actor.organisationId, (tx) => viewAppointment(tx, actor, appointmentId)),
    );
  }

  @Roles('front-desk')
  @Get(':id/alternatives')
  alternatives(@CurrentActor() actor: Actor, @IdParam('appointment') appointmentId: string): Promise<AlternativesView> {
    return alternativesOf({ db: this.db, searches: this.searches }, actor, appointmentId, this.clock.now());
  }

  @Roles('front-desk', 'clinician')
  @Post(':id/actions')
  @HttpCode(200)
  async act(
    @CurrentActor() actor: Actor,
    @IdParam('appointment') appointmentId: string,
    @IfMatch() version: number,
    @Body({ schema: visitAction }) { action }: VisitAction,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AppointmentView> {
    const view = await inOrganisation(this.db, actor.organisationId, async (tx) => {
      await actOnVisit(tx, actor, appointmentId, { action, version }, this.clock.now());
      return viewAppointment(tx, actor, appointmentId);
    });
    return tagged(reply, view);
  }
}
