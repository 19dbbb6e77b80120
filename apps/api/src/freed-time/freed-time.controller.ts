import { Controller, Get, Query } from '@nestjs/common';
import { Searches, freedTimeOf, type Actor } from '@archwright/casework';
import { freedTimeQuery, type FreedTimeQuery, type FreedTimeView } from '@archwright/contracts';
import { Clock } from '@archwright/platform';
import { DataSource } from 'typeorm';
import { WhenGone } from '../when-gone.js';
import { CurrentActor, Roles } from '../security/access.js';

/** Who gains most by time that has become free. */
@Controller('freed-time')
@Roles('front-desk')
export class FreedTimeController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
    private readonly searches: Searches,
  ) {}

  @Get()
  ask(
    @CurrentActor() actor: Actor,
    @Query({ schema: freedTimeQuery }) query: FreedTimeQuery,
    @WhenGone() signal: AbortSignal,
  ): Promise<FreedTimeView> {
    return freedTimeOf({ db: this.db, searches: this.searches, signal }, actor, query, this.clock.now());
  }
}
