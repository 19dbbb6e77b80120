import { Injectable } from '@nestjs/common';
import {
  IdempotencyKeys,
  OfferTakenError,
  Searches,
  confirmHold,
  holdOffer,
  isOfferGone,
  planAgain,
  releaseHold,
  viewCase,
  type Actor,
} from '@archwright/casework';
import type { CaseView, ConfirmHold, CreateHold, HoldView } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { Clock, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { Hold, inOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';

const USUAL_OFFERS = 3;

/** Holding and confirming offers; whoever comes too late gets fresh ones with the refusal. */
@Injectable()
export class HoldsService {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
    private readonly searches: Searches,
  ) {}

  hold(actor: Actor, caseId: string, body: CreateHold, request: IdempotentRequest): Promise<HoldView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'hold-offer', now);
    return this.withFreshOffers(actor, body.offerId, () =>
      inOrganisation(this.db, actor.organisationId, (tx) =>
        answerOnce(keys, tx, request, () => holdOffer(tx, actor, caseId, body, now)),
      ),
    );
  }

  async confirm(actor: Actor, holdId: string, body: ConfirmHold, request: IdempotentRequest): Promise<CaseView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'confirm-hold', now);
    const hold = await inOrganisation(this.db, actor.organisationId, (tx) => tx.findOneBy(Hold, { id: holdId }));
    return this.withFreshOffers(actor, hold?.planId ?? null, () =>
      inOrganisation(this.db, actor.organisationId, (tx) =>
        answerOnce(keys, tx, request, async () =>
          viewCase(tx, actor, await confirmHold(tx, actor, holdId, body, now), now),
        ),
      ),
    );
  }

  release(actor: Actor, holdId: string): Promise<void> {
    return inOrganisation(this.db, actor.organisationId, (tx) => releaseHold(tx, actor, holdId, this.clock.now()));
  }

  /** The refused transaction is over by then: what it had taken is free again. */
  private async withFreshOffers<Answer>(
    actor: Actor,
    offerId: string | null,
    work: () => Promise<Answer>,
  ): Promise<Answer> {
    try {
      return await work();
    } catch (error) {
      if (!isOfferGone(error) || offerId === null) throw error;
      throw await this.takenError(actor, offerId, error);
    }
  }

  private async takenError(actor: Actor, offerId: string, refusal: DomainError): Promise<OfferTakenError> {
    const means = { db: this.db, searches: this.searches };
    const offers = await planAgain(means, actor, { offerId, count: USUAL_OFFERS }, this.clock.now());
    return new OfferTakenError(refusal.message, refusal.details, offers);
  }
}
