import { Controller, Get, Query } from '@nestjs/common';
import { viewStageBoard, type Actor } from '@archwright/casework';
import { dayQuery, type DayQuery, type StageBoard } from '@archwright/contracts';
import { Clock } from '@archwright/platform';
import { readInOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';

@Controller('stage-board')
export class StageBoardController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('clinician', 'front-desk', 'manager')
  @Get()
  show(@CurrentActor() actor: Actor, @Query({ schema: dayQuery }) query: DayQuery): Promise<StageBoard> {
    const now = this.clock.now();
    return readInOrganisation(this.db, actor.organisationId, (tx) => viewStageBoard(tx, actor, query, now));
  }
}
