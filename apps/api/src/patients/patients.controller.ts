import { Body, Controller, Get, Param, Post, Put, Query, Res } from '@nestjs/common';
import {
  IdempotencyKeys,
  createPatient,
  findPatients,
  updatePatient,
  viewPatient,
  type Actor,
} from '@archwright/casework';
import {
  createPatient as createPatientBody,
  id as recordId,
  patientQuery,
  type CreatePatient,
  type PatientPage,
  type PatientQuery,
  type PatientView,
} from '@archwright/contracts';
import { Clock, Idempotent, IfMatch, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

@Controller('patients')
export class PatientsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('front-desk', 'clinician', 'manager')
  @Get()
  find(@CurrentActor() actor: Actor, @Query({ schema: patientQuery }) query: PatientQuery): Promise<PatientPage> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => findPatients(tx, actor, query));
  }

  @Roles('front-desk', 'clinician', 'manager')
  @Get(':id')
  async show(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<PatientView> {
    const view = await readInOrganisation(this.db, actor.organisationId, (tx) => viewPatient(tx, actor, id));
    return tagged(reply, view);
  }

  @Roles('front-desk', 'manager')
  @Post()
  async create(
    @CurrentActor() actor: Actor,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: createPatientBody }) body: CreatePatient,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<PatientView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'create-patient', now);
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => createPatient(tx, actor, body, now)),
    );
    return tagged(reply, view);
  }

  @Roles('front-desk', 'manager')
  @Put(':id')
  async update(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: createPatientBody }) body: CreatePatient,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<PatientView> {
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      updatePatient(tx, actor, id, version, body, this.clock.now()),
    );
    return tagged(reply, view);
  }
}
