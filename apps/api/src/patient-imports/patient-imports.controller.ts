import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { importPatientTable, type Actor } from '@archwright/casework';
import {
  importPatientTable as importBody,
  type ImportPatientTable,
  type ImportedPatientTable,
} from '@archwright/contracts';
import { RouteConfig } from '@nestjs/platform-fastify';
import { Clock } from '@archwright/platform';
import { attemptInOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';

/** A table of some ten thousand patients in one request; larger ones are a matter of the command line. */
const TABLE_BODY_BYTES = 8 * 1024 * 1024;

@Controller('patient-imports')
export class PatientImportsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  /** Needs no Idempotency-Key: the same file again writes no row. */
  @Roles('manager')
  @Post()
  @HttpCode(200)
  @RouteConfig({ bodyLimit: TABLE_BODY_BYTES })
  import(
    @CurrentActor() actor: Actor,
    @Body({ schema: importBody }) body: ImportPatientTable,
  ): Promise<ImportedPatientTable> {
    return attemptInOrganisation(
      this.db,
      actor.organisationId,
      (tx) => importPatientTable(tx, actor, body, this.clock.now()),
      ({ isWritten }) => isWritten,
    );
  }
}
