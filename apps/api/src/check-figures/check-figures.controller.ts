import { Controller, Get } from '@nestjs/common';
import { viewCheckFigures, type Actor } from '@archwright/casework';
import type { CheckFigures } from '@archwright/contracts';
import { readInOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';

/** How each rule of the checks fares in the practice. */
@Roles('clinician', 'manager')
@Controller('check-figures')
export class CheckFiguresController {
  constructor(private readonly db: DataSource) {}

  @Get()
  show(@CurrentActor() actor: Actor): Promise<CheckFigures> {
    return readInOrganisation(this.db, actor.organisationId, viewCheckFigures);
  }
}
