import { Body, Controller, Get, Post, Put, Res } from '@nestjs/common';
import {
  IdempotencyKeys,
  addUser,
  changeUser,
  listUsers,
  resetPassword,
  setUserActive,
  type Actor,
} from '@archwright/casework';
import {
  addUser as addBody,
  changeUser as changeBody,
  resetPassword as resetBody,
  setUserActive as activeBody,
  type AddUser,
  type ChangeUser,
  type ResetPassword,
  type SetUserActive,
  type UserList,
  type UserView,
} from '@archwright/contracts';
import { Clock, Idempotent, IfMatch, answerOnce, type IdempotentRequest } from '@archwright/platform';
import { inOrganisation, readInOrganisation } from '@archwright/records';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { IdParam } from '../id-param.js';
import { CurrentActor, Roles } from '../security/access.js';
import { tagged } from '../tagged.js';

/** Who may sign in, and what for. */
@Controller('users')
@Roles('manager')
export class UsersController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
  ) {}

  @Get()
  list(@CurrentActor() actor: Actor): Promise<UserList> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => listUsers(tx, actor));
  }

  @Post()
  async add(
    @CurrentActor() actor: Actor,
    @Idempotent() request: IdempotentRequest,
    @Body({ schema: addBody }) body: AddUser,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<UserView> {
    const now = this.clock.now();
    const keys = new IdempotencyKeys(actor, 'add-user', now);
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      answerOnce(keys, tx, request, () => addUser(tx, actor, body, now)),
    );
    return tagged(reply, view);
  }

  @Put(':id')
  async change(
    @CurrentActor() actor: Actor,
    @IdParam('user') id: string,
    @IfMatch() version: number,
    @Body({ schema: changeBody }) body: ChangeUser,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<UserView> {
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      changeUser(tx, actor, { id, version, body }, this.clock.now()),
    );
    return tagged(reply, view);
  }

  @Put(':id/activity')
  async setActive(
    @CurrentActor() actor: Actor,
    @IdParam('user') id: string,
    @IfMatch() version: number,
    @Body({ schema: activeBody }) { isActive }: SetUserActive,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<UserView> {
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      setUserActive(tx, actor, { id, version, isActive }, this.clock.now()),
    );
    return tagged(reply, view);
  }

  @Put(':id/password')
  async reset(
    @CurrentActor() actor: Actor,
    @IdParam('user') id: string,
    @IfMatch() version: number,
    @Body({ schema: resetBody }) { password }: ResetPassword,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<UserView> {
    const view = await inOrganisation(this.db, actor.organisationId, (tx) =>
      resetPassword(tx, actor, { id, version, password }, this.clock.now()),
    );
    return tagged(reply, view);
  }
}
