import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { importResourceCalendar, type Actor } from '@archwright/casework';
import { importCalendar, type ImportCalendar, type ImportedCalendar } from '@archwright/contracts';
import { Clock } from '@archwright/platform';
import { inOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';
import { IdParam } from '../id-param.js';
import { CurrentActor, Roles } from '../security/access.js';

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
  importCalendar(
    @CurrentActor() actor: Actor,
    @IdParam('resource') id: string,
    @Body({ schema: importCalendar }) body: ImportCalendar,
  ): Promise<ImportedCalendar> {
    return inOrganisation(this.db, actor.organisationId, (tx) =>
      importResourceCalendar(tx, actor, id, body, this.clock.now()),
    );
  }
}
