import { Body, Controller, Get, Param, Put, Res } from '@nestjs/common';
import { listPaths, publishPath, setPathWithdrawn, viewPath, type Actor } from '@archwright/casework';
import {
  publishPath as publishBody,
  setWithdrawal,
  slug,
  type PathList,
  type PathView,
  type PublishPath,
  type SetWithdrawal,
} from '@archwright/contracts';
import { Clock, IfMatch } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { IdParam } from '../id-param.js';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** Treatment paths as a practice copies, changes and publishes them. */
@Controller('treatment-paths')
@Roles('manager')
export class TreatmentPathsController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Get()
  list(@CurrentActor() actor: Actor): Promise<PathList> {
    return readInOrganisation(this.db, actor.organisationId, listPaths);
  }

  @Get(':id')
  async show(
    @CurrentActor() actor: Actor,
    @IdParam('treatment path version') id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<PathView> {
    return tagged(reply, await readInOrganisation(this.db, actor.organisationId, (tx) => viewPath(tx, id)));
  }

  /** `If-Match` names the latest version of the path, 0 for a path that is new; what is answered is the next one. */
  @Put(':code')
  async publish(
    @CurrentActor() actor: Actor,
    @Param('code', { schema: slug }) code: string,
    @IfMatch() basedOn: number,
    @Body({ schema: publishBody }) { document }: PublishPath,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<PathView> {
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      publishPath(tx, actor, { code, basedOn, document }, this.clock.now()),
    );
    return tagged(reply, view);
  }

  /** Needs no precondition: a version never changes, and withdrawn is withdrawn. */
  @Put(':id/withdrawal')
  async withdraw(
    @CurrentActor() actor: Actor,
    @IdParam('treatment path version') id: string,
    @Body({ schema: setWithdrawal }) { isWithdrawn }: SetWithdrawal,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<PathView> {
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      setPathWithdrawn(tx, actor, { id, isWithdrawn }, this.clock.now()),
    );
    return tagged(reply, view);
  }
}
