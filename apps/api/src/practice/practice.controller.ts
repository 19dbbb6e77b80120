import { Controller, Get } from '@nestjs/common';
import { practiceView, type Actor } from '@archwright/casework';
import type { PracticeView } from '@archwright/contracts';
import { Clock } from '@archwright/platform';
import { inOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';
import { CurrentActor } from '../security/access.js';

@Controller('practice')
export class PracticeController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Get()
  show(@CurrentActor() actor: Actor): Promise<PracticeView> {
    return inOrganisation(this.db, actor.organisationId, (tx) => practiceView(tx, actor, this.clock.now()));
  }
}
