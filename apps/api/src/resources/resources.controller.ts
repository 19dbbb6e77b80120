import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { importResourceCalendar, type Actor } from '@archwright/casework';
import { importCalendar, type ImportCalendar, type ImportedCalendar } from '@archwright/contracts';
import { RouteConfig } from '@nestjs/platform-fastify';
import { Clock } from '@archwright/platform';
import { attemptInOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';
import { IdParam } from '../id-param.js';
import { CurrentActor, Roles } from '../security/access.js';

/** A whole calendar file in which JSON escapes every character by another one, as it does line ends and quotes. */
const CALENDAR_BODY_BYTES = 10 * 1024 * 1024;

@Controller('resources')
export class ResourcesController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  /** Needs no Idempotency-Key: the same feed again changes nothing. */
  @Roles('front-desk', 'manager')
  @Post(':id/calendar')
  @HttpCode(200)
  @RouteConfig({ bodyLimit: CALENDAR_BODY_BYTES })
  importCalendar(
    @CurrentActor() actor: Actor,
    @IdParam('resource') id: string,
    @Body({ schema: importCalendar }) body: ImportCalendar,
  ): Promise<ImportedCalendar> {
    return attemptInOrganisation(
      this.db,
      actor.organisationId,
      (tx) => importResourceCalendar(tx, actor, id, body, this.clock.now()),
      () => !body.isTrial,
    );
  }
}
