import { Controller, Get, HttpCode, Inject, Post, Res } from '@nestjs/common';
import { IdempotencyKeys, itineraryFile, sendItinerary, viewItinerary, type Actor } from '@archwright/casework';
import type { ItinerarySent, ItineraryView } from '@archwright/contracts';
import {
  CONFIGURATION,
  Clock,
  Idempotent,
  answerOnce,
  senderOf,
  type Configuration,
  type IdempotentRequest,
} from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { IdParam } from '../id-param.js';
import { CurrentActor, Roles } from '../security/access.js';

/** What a patient takes home: their coming visits on paper, in their calendar, by mail. */
@Controller('cases/:id/itinerary')
export class ItinerariesController {
  private readonly organiser: ReturnType<typeof senderOf>;

  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
    @Inject(CONFIGURATION) { mailFrom }: Configuration,
  ) {
    this.organiser = senderOf(mailFrom);
  }

  @Roles('front-desk', 'clinician')
  @Get()
  show(@CurrentActor() actor: Actor, @IdParam('case') caseId: string): Promise<ItineraryView> {
    return readInOrganisation(this.db, actor.organisationId, (tx) =>
      viewItinerary(tx, actor, caseId, this.clock.now()),
    );
  }

  @Roles('front-desk', 'clinician')
  @Get('calendar')
  async calendar(
    @CurrentActor() actor: Actor,
    @IdParam('case') caseId: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<string> {
    const asked = { caseId, organiser: this.organiser };
    const file = await readInOrganisation(this.db, actor.organisationId, (tx) =>
      itineraryFile(tx, actor, asked, this.clock.now()),
    );
    void reply.header('content-type', 'text/calendar; charset=utf-8');
    void reply.header('content-disposition', 'attachment; filename="visits.ics"');
    return file;
  }

  @Roles('front-desk')
  @Post()
  @HttpCode(200)
  send(
    @CurrentActor() actor: Actor,
    @IdParam('case') caseId: string,
    @Idempotent() request: IdempotentRequest,
  ): Promise<ItinerarySent> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'send-itinerary', now);
    return inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => sendItinerary(tx, actor, caseId, now)),
    );
  }
}
