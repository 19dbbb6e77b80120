import { Body, Controller, Delete, Get, HttpCode, Inject, Ip, Post, Put, Req, Res } from '@nestjs/common';
import { changeOwnPassword, endSession, signIn, type Actor, type SignedIn } from '@archwright/casework';
import {
  changeOwnPassword as passwordBody,
  signIn as signInBody,
  type ChangeOwnPassword,
  type SessionView,
  type SignIn,
} from '@archwright/contracts';
import { CONFIGURATION, Clock, type Configuration } from '@archwright/platform';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { CurrentActor, Public, type SignedInRequest } from '../security/access.js';
import { clearSessionCookie, readSessionCookie, setSessionCookie } from '../security/session-cookie.js';

@Controller('sessions')
export class SessionsController {
  private readonly isSecure: boolean;
  private readonly isDemonstration: boolean;

  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
    @Inject(CONFIGURATION) configuration: Configuration,
  ) {
    this.isSecure = configuration.publicUrl.startsWith('https:');
    this.isDemonstration = configuration.mailCatcherUrl !== null;
  }

  @Public()
  @Post()
  async open(
    @Body({ schema: signInBody }) body: SignIn,
    @Ip() address: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<SessionView> {
    const { token, view } = await signIn(this.db, body, address, this.clock.now());
    setSessionCookie(reply, token, this.isSecure);
    return this.viewOf(view);
  }

  @Get('current')
  current(@Req() request: SignedInRequest): SessionView {
    return this.viewOf(request.signedIn.view);
  }

  @Delete('current')
  @HttpCode(204)
  async close(@Req() request: SignedInRequest, @Res({ passthrough: true }) reply: FastifyReply): Promise<void> {
    const token = readSessionCookie(request);
    if (token !== null) await endSession(this.db, token);
    clearSessionCookie(reply, this.isSecure);
  }

  /** Ends every session of the person, this one as well. */
  @Put('current/password')
  @HttpCode(204)
  async changePassword(
    @CurrentActor() actor: Actor,
    @Body({ schema: passwordBody }) body: ChangeOwnPassword,
    @Ip() address: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<void> {
    await changeOwnPassword(this.db, actor, body, address, this.clock.now());
    clearSessionCookie(reply, this.isSecure);
  }

  private viewOf(view: SignedIn['view']): SessionView {
    return { ...view, isDemonstration: this.isDemonstration };
  }
}
