import { Controller, Headers, Inject, Query, Req, Sse, type MessageEvent } from '@nestjs/common';
import { changeNewsFor, resumeSession, type Actor } from '@archwright/casework';
import { changePosition, changesQuery, type ChangesQuery } from '@archwright/contracts';
import { Clock, LOGGER } from '@archwright/platform';
import type { ChangesSince } from '@archwright/records';
import type { FastifyRequest } from 'fastify';
import type { Logger } from 'pino';
import { EMPTY, catchError, concatMap, ignoreElements, interval, of, takeUntil, type Observable } from 'rxjs';
import { DataSource } from 'typeorm';
import { CurrentActor } from '../security/access.js';
import { readSessionCookie } from '../security/session-cookie.js';
import { ChangeFeed } from './change-feed.js';

/** How long somebody who has signed out elsewhere, or was locked out, may go on listening. */
const SESSION_ASKED_EVERY_MS = 30_000;

/** What happens in the organisation, while it happens: kinds and ids, as server-sent events. */
@Controller('changes')
export class ChangesController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
    private readonly feed: ChangeFeed,
    @Inject(LOGGER) private readonly logger: Logger,
  ) {}

  @Sse()
  follow(
    @CurrentActor() actor: Actor,
    @Query({ schema: changesQuery }) { after }: ChangesQuery,
    @Headers('last-event-id') lastEventId: string | undefined,
    @Req() request: FastifyRequest,
  ): Observable<MessageEvent> {
    const since = changePosition.safeParse(lastEventId ?? after).data;
    return this.feed.follow(actor.organisationId, since === undefined ? null : BigInt(since)).pipe(
      // One after the other, so that they keep their order.
      concatMap((changes) => this.messageFor(actor, changes)),
      // Whoever listens comes again with the last position; what went wrong is nothing for the stream to tell.
      catchError((error: unknown) => {
        this.logger.warn({ err: error }, 'a stream of changes ends; its listener comes again');
        return EMPTY;
      }),
      takeUntil(this.sessionEnded(readSessionCookie(request) ?? '')),
    );
  }

  private async messageFor(actor: Actor, changes: ChangesSince): Promise<MessageEvent> {
    return { id: String(changes.position), data: await changeNewsFor(this.db, actor, changes) };
  }

  /** Emits once, when the session is over or can't be looked up; whoever may listen comes again. */
  private sessionEnded(token: string): Observable<true> {
    return interval(SESSION_ASKED_EVERY_MS).pipe(
      concatMap(() => resumeSession(this.db, token, this.clock.now())),
      ignoreElements(),
      catchError(() => of(true as const)),
    );
  }
}
