import { Body, Controller, HttpCode, Post, Res } from '@nestjs/common';
import {
  IdempotencyKeys,
  Searches,
  applyRipple,
  previewCancel,
  previewMove,
  viewCase,
  type Actor,
} from '@archwright/casework';
import {
  applyRipple as applyRippleBody,
  previewCancel as previewCancelBody,
  previewMove as previewMoveBody,
  type ApplyRipple,
  type CaseView,
  type PreviewCancel,
  type PreviewMove,
  type Ripple,
} from '@archwright/contracts';
import { Clock, Idempotent, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { IdParam } from '../id-param.js';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** What a change would do, shown before it is done; the preview is kept and changes nothing. */
@Controller('ripples')
@Roles('front-desk')
export class RipplesController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
    private readonly searches: Searches,
  ) {}

  @Post('move')
  @HttpCode(200)
  move(@CurrentActor() actor: Actor, @Body({ schema: previewMoveBody }) body: PreviewMove): Promise<Ripple> {
    return previewMove({ db: this.db, searches: this.searches }, actor, body, this.clock.now());
  }

  @Post('cancel')
  @HttpCode(200)
  cancel(@CurrentActor() actor: Actor, @Body({ schema: previewCancelBody }) body: PreviewCancel): Promise<Ripple> {
    return previewCancel({ db: this.db, searches: this.searches }, actor, body, this.clock.now());
  }

  @Post(':id/apply')
  @HttpCode(200)
  async apply(
    @CurrentActor() actor: Actor,
    @IdParam('plan') rippleId: string,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: applyRippleBody }) { planHash }: ApplyRipple,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<CaseView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'apply-ripple', now);
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, async () =>
        viewCase(tx, actor, await applyRipple(tx, actor, rippleId, planHash, now), now),
      ),
    );
    return tagged(reply, view);
  }
}
