import { Body, Controller, Delete, HttpCode, Post, Res } from '@nestjs/common';
import type { Actor } from '@archwright/casework';
import {
  confirmHold as confirmHoldBody,
  createHold as createHoldBody,
  type CaseView,
  type ConfirmHold,
  type CreateHold,
  type HoldView,
} from '@archwright/contracts';
import { Idempotent, type IdempotentRequest } from '@archwright/platform';
import type { FastifyReply } from 'fastify';
import { IdParam } from '../id-param.js';
import { CurrentActor, Roles } from '../security/access.js';
import { HoldsService } from './holds.service.js';
import { tagged } from '../tagged.js';

@Controller()
@Roles('front-desk')
export class HoldsController {
  constructor(private readonly holds: HoldsService) {}

  @Post('cases/:id/holds')
  hold(
    @CurrentActor() actor: Actor,
    @IdParam('case') caseId: string,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: createHoldBody }) body: CreateHold,
  ): Promise<HoldView> {
    return this.holds.hold(actor, caseId, body, request);
  }

  @Post('holds/:id/confirm')
  @HttpCode(200)
  async confirm(
    @CurrentActor() actor: Actor,
    @IdParam('hold') holdId: string,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: confirmHoldBody }) body: ConfirmHold,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<CaseView> {
    const view = await this.holds.confirm(actor, holdId, body, request);
    return tagged(reply, view);
  }

  @Delete('holds/:id')
  @HttpCode(204)
  release(@CurrentActor() actor: Actor, @IdParam('hold') holdId: string): Promise<void> {
    return this.holds.release(actor, holdId);
  }
}
