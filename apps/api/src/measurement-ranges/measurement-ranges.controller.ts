import { Body, Controller, Get, Put, Res } from '@nestjs/common';
import { changeMeasurementRanges, viewMeasurementRanges, type Actor } from '@archwright/casework';
import {
  changeMeasurementRanges as changeBody,
  type ChangeMeasurementRanges,
  type MeasurementRangesView,
} from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** Usual ranges and limits of the checks, as shipped and as the practice has them. */
@Controller('measurement-ranges')
export class MeasurementRangesController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Roles('clinician', 'manager')
  @Get()
  async show(
    @CurrentActor() actor: Actor,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<MeasurementRangesView> {
    return tagged(reply, await readInOrganisation(this.db, actor.organisationId, viewMeasurementRanges));
  }

  @Roles('manager')
  @Put()
  async change(
    @CurrentActor() actor: Actor,
    @IfMatch() version: number,
    @Body({ schema: changeBody }) body: ChangeMeasurementRanges,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<MeasurementRangesView> {
    const now = this.clock.now();
    const view = await inOrganisation(this.db, actor.organisationId, async (tx) => {
      await changeMeasurementRanges(tx, actor, { ...body, version }, now);
      return viewMeasurementRanges(tx);
    });
    return tagged(reply, view);
  }
}
