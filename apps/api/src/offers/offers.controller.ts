import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { Searches, planCase, type Actor } from '@archwright/casework';
import { requestOffers, type OffersView, type RequestOffers } from '@archwright/contracts';
import { Clock } from '@archwright/platform';
import { DataSource } from 'typeorm';
import { IdParam } from '../id-param.js';
import { WhenGone } from '../when-gone.js';
import { CurrentActor, Roles } from '../security/access.js';

@Controller('cases/:id/offers')
@Roles('front-desk', 'clinician', 'manager')
export class OffersController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
    private readonly searches: Searches,
  ) {}

  /** Offers are kept so that one can be held; asking again makes others and takes nobody's time. */
  @Post()
  @HttpCode(200)
  ask(
    @CurrentActor() actor: Actor,
    @IdParam('case') caseId: string,
    @Body({ schema: requestOffers }) body: RequestOffers,
    @WhenGone() signal: AbortSignal,
  ): Promise<OffersView> {
    return planCase({ db: this.db, searches: this.searches, signal }, actor, caseId, body, this.clock.now());
  }
}
