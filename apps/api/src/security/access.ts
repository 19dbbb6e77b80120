import { SetMetadata, createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { Role } from '@archwright/contracts';
import type { Actor, SignedIn } from '@archwright/casework';
import type { FastifyRequest } from 'fastify';

/** A request after the session guard has let it through. */
export interface SignedInRequest extends FastifyRequest {
  signedIn: SignedIn;
}

export const ROLES = 'roles';
export const PUBLIC = 'public';

/** Who may call this; an administrator may call everything that has roles. */
export const Roles = (...roles: Role[]) => SetMetadata(ROLES, roles);

/** Callable without a session. */
export const Public = () => SetMetadata(PUBLIC, true);

/** Controller parameter: on whose behalf the call is made. */
export const CurrentActor = createParamDecorator(
  (_: unknown, context: ExecutionContext): Actor => context.switchToHttp().getRequest<SignedInRequest>().signedIn.actor,
);
