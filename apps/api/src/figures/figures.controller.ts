import { Controller, Get } from '@nestjs/common';
import { viewFigures, type Actor } from '@archwright/casework';
import type { FiguresView } from '@archwright/contracts';
import { Clock } from '@archwright/platform';
import { readInOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';

/** How the practice does. */
@Controller('figures')
@Roles('manager')
export class FiguresController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Get()
  show(@CurrentActor() actor: Actor): Promise<FiguresView> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => viewFigures(tx, actor, this.clock.now()));
  }
}
