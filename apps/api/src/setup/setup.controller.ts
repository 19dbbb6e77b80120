import { Body, Controller, Delete, Get, HttpCode, Post, Put, Res } from '@nestjs/common';
import {
  IdempotencyKeys,
  addToSetup,
  dropClosure,
  previewSetup,
  replaceInSetup,
  retireInSetup,
  viewSetup,
  type Actor,
} from '@archwright/casework';
import {
  setRetirement,
  setupChange,
  setupRecord,
  type SetRetirement,
  type SetupChange,
  type SetupEntry,
  type SetupPreview,
  type SetupRecord,
  type SetupView,
} from '@archwright/contracts';
import { Clock, Idempotent, IfMatch, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { IdParam } from '../id-param.js';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** What the practice consists of: clinics, people, chairs, kits, laboratories, benches, couriers, and when they are open. */
@Controller('setup')
@Roles('manager')
export class SetupController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Get()
  show(@CurrentActor() actor: Actor): Promise<SetupView> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => viewSetup(tx, actor, this.clock.now()));
  }

  /** Changes nothing: what the change would do to booked time. */
  @Post('preview')
  @HttpCode(200)
  preview(@CurrentActor() actor: Actor, @Body({ schema: setupChange }) change: SetupChange): Promise<SetupPreview> {
    return inOrganisation(this.db, actor.organisationId, (tx) => previewSetup(tx, actor, change, this.clock.now()));
  }

  @Post('records')
  async add(
    @CurrentActor() actor: Actor,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: setupRecord }) record: SetupRecord,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<SetupEntry> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'add-to-setup', now);
    const entry = await inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => addToSetup(tx, actor, record, now)),
    );
    return tagged(reply, entry);
  }

  @Put('records/:id')
  async replace(
    @CurrentActor() actor: Actor,
    @IdParam('part of the practice') id: string,
    @IfMatch() version: number,
    @Body({ schema: setupRecord }) record: SetupRecord,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<SetupEntry> {
    const entry = await inOrganisation(this.db, actor.organisationId, (tx) =>
      replaceInSetup(tx, actor, { id, version, record }, this.clock.now()),
    );
    return tagged(reply, entry);
  }

  @Put('records/:id/retirement')
  async retire(
    @CurrentActor() actor: Actor,
    @IdParam('part of the practice') id: string,
    @IfMatch() version: number,
    @Body({ schema: setRetirement }) { isRetired }: SetRetirement,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<SetupEntry> {
    const entry = await inOrganisation(this.db, actor.organisationId, (tx) =>
      retireInSetup(tx, actor, { id, version, isRetired }, this.clock.now()),
    );
    return tagged(reply, entry);
  }

  @Delete('closures/:id')
  @HttpCode(204)
  async dropClosure(@CurrentActor() actor: Actor, @IdParam('closure') id: string): Promise<void> {
    await inOrganisation(this.db, actor.organisationId, (tx) => dropClosure(tx, actor, id, this.clock.now()));
  }
}
