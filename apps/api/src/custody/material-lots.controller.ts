import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { IdempotencyKeys, findMaterialLots, recordMaterialLot, type Actor } from '@archwright/casework';
import {
  id as recordId,
  materialLotQuery,
  recordMaterialLot as recordBody,
  type MaterialLotPage,
  type MaterialLotQuery,
  type MaterialLotView,
  type RecordMaterialLot,
} from '@archwright/contracts';
import { Clock, Idempotent, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';

/** Which material went where: for the day on which a maker recalls a lot. */
@Controller()
export class MaterialLotsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('front-desk', 'clinician', 'lab', 'manager')
  @Get('material-lots')
  find(
    @CurrentActor() actor: Actor,
    @Query({ schema: materialLotQuery }) query: MaterialLotQuery,
  ): Promise<MaterialLotPage> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => findMaterialLots(tx, actor, query));
  }

  @Roles('lab')
  @Post('lab/steps/:id/material-lots')
  record(
    @CurrentActor() actor: Actor,
    @Idempotent() request: IdempotentRequest,
    @Param('id', { schema: recordId }) id: string,
    @Body({ schema: recordBody }) body: RecordMaterialLot,
  ): Promise<MaterialLotView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, `record-material-lot ${id}`, now);
    return inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => recordMaterialLot(tx, actor, id, body, now)),
    );
  }
}
