import { Body, Controller, Get, HttpCode, Param, Post, Query, Res } from '@nestjs/common';
import {
  IdempotencyKeys,
  actOnParcel,
  listParcels,
  packParcel,
  reconcileParcel,
  viewParcel,
  type Actor,
} from '@archwright/casework';
import {
  id as recordId,
  packParcel as packBody,
  parcelAction,
  parcelQuery,
  reconcileParcel as reconcileBody,
  type PackParcel,
  type ParcelAction,
  type ParcelPage,
  type ParcelQuery,
  type ParcelView,
  type ReconcileParcel,
} from '@archwright/contracts';
import { Clock, Idempotent, IfMatch, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** Objects on their way between clinic and laboratory. */
@Controller('parcels')
export class ParcelsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('front-desk', 'clinician', 'lab', 'manager')
  @Get()
  list(@CurrentActor() actor: Actor, @Query({ schema: parcelQuery }) query: ParcelQuery): Promise<ParcelPage> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => listParcels(tx, actor, query));
  }

  @Roles('front-desk', 'clinician', 'lab', 'manager')
  @Get(':id')
  async show(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ParcelView> {
    return tagged(reply, await readInOrganisation(this.db, actor.organisationId, (tx) => viewParcel(tx, actor, id)));
  }

  @Roles('front-desk', 'clinician', 'lab')
  @Post()
  async pack(
    @CurrentActor() actor: Actor,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: packBody }) body: PackParcel,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ParcelView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'pack-parcel', now);
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => packParcel(tx, actor, body, now)),
    );
    return tagged(reply, view);
  }

  @Roles('front-desk', 'clinician', 'lab')
  @Post(':id/actions')
  @HttpCode(200)
  async act(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: parcelAction }) body: ParcelAction,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ParcelView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      actOnParcel(tx, actor, id, { ...body, version }, now),
    );
    return tagged(reply, view);
  }

  @Roles('front-desk', 'clinician', 'lab')
  @Post(':id/reconciliation')
  @HttpCode(200)
  async reconcile(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
    @IfMatch() version: number,
    @Body({ schema: reconcileBody }) body: ReconcileParcel,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ParcelView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      reconcileParcel(tx, actor, id, { ...body, version }, now),
    );
    return tagged(reply, view);
  }
}
