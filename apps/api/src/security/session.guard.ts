import { Injectable, type CanActivate, type ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { NotYoursError, SessionEndedError, resumeSession } from '@archwright/casework';
import type { Role } from '@archwright/contracts';
import { Clock } from '@archwright/platform';
import { DataSource } from 'typeorm';
import { PUBLIC, ROLES, type SignedInRequest } from './access.js';
import { readSessionCookie } from './session-cookie.js';

/** Lets nobody through without a live session, and nobody past a route that names other roles. */
@Injectable()
export class SessionGuard implements CanActivate {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
    private readonly reflector: Reflector,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const targets = [context.getHandler(), context.getClass()];
    if (this.reflector.getAllAndOverride<boolean | undefined>(PUBLIC, targets) === true) return true;
    const request = context.switchToHttp().getRequest<SignedInRequest>();
    const token = readSessionCookie(request);
    if (token === null) throw new SessionEndedError();
    request.signedIn = await resumeSession(this.db, token, this.clock.now());
    this.requireRole(request.signedIn.actor.role, this.reflector.getAllAndOverride<Role[] | undefined>(ROLES, targets));
    return true;
  }

  /** A route without roles is open to everyone who is signed in. */
  private requireRole(role: string, allowed: readonly Role[] | undefined): void {
    if (allowed === undefined || role === 'administrator' || allowed.some((one) => one === role)) return;
    throw new NotYoursError(`This is done by: ${allowed.join(', ')}. You are signed in as ${role}.`);
  }
}
