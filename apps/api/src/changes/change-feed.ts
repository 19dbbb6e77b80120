import { setTimeout as pause } from 'node:timers/promises';
import { Inject, Injectable, type OnModuleDestroy } from '@nestjs/common';
import { LOGGER } from '@archwright/platform';
import { changesSince, readInOrganisation, type ChangesSince } from '@archwright/records';
import type { Logger } from 'pino';
import { Observable, type Subscriber } from 'rxjs';
import { DataSource } from 'typeorm';

const LOOK_EVERY_MS = 1_000;
/** An empty message goes out so often: it shows that the line holds, and moves the position on. */
const SILENT_LOOKS = 15;

type Listener = Subscriber<ChangesSince>;

/** The listeners of one organisation, all told up to the same position. */
class Room {
  readonly listeners = new Set<Listener>();
  /** Those who came since the last look, with the position that each goes on from. */
  readonly newcomers = new Map<Listener, bigint | null>();
  position: bigint | null = null;
  silentLooks = 0;

  get isEmpty(): boolean {
    return this.listeners.size + this.newcomers.size === 0;
  }

  everybody(): Listener[] {
    return [...this.listeners, ...this.newcomers.keys()];
  }
}

/**
 * Tells who listens what was committed in their organisation. It looks into the database once a second for each
 * organisation that somebody listens to, however many do: so it does not matter which process made a change.
 */
@Injectable()
export class ChangeFeed implements OnModuleDestroy {
  private readonly rooms = new Map<string, Room>();

  constructor(
    private readonly db: DataSource,
    @Inject(LOGGER) private readonly logger: Logger,
  ) {}

  /**
   * @param since the position of the last message that arrived; null for a first visit
   * @returns a message within a second, even when nothing happened, and then whenever something did. It ends when the
   *   database or this process goes away; whoever listened comes again with the last position.
   */
  follow(organisationId: string, since: bigint | null): Observable<ChangesSince> {
    return new Observable((listener) => {
      const known = this.rooms.get(organisationId);
      const room = known ?? new Room();
      room.newcomers.set(listener, since ?? room.position);
      if (known === undefined) {
        this.rooms.set(organisationId, room);
        void this.serve(organisationId, room);
      }
      return () => {
        room.listeners.delete(listener);
        room.newcomers.delete(listener);
      };
    });
  }

  onModuleDestroy(): void {
    for (const room of this.rooms.values()) for (const listener of room.everybody()) listener.complete();
  }

  private async serve(organisationId: string, room: Room): Promise<void> {
    try {
      while (!room.isEmpty) {
        await this.look(organisationId, room);
        await pause(LOOK_EVERY_MS, undefined, { ref: false });
      }
    } catch (error) {
      this.logger.warn({ err: error }, 'the stream of changes ends; its listeners come again');
    }
    this.rooms.delete(organisationId);
    for (const listener of room.everybody()) listener.complete();
  }

  private async look(organisationId: string, room: Room): Promise<void> {
    const told = [...room.listeners];
    // One snapshot for all, so that newcomers have heard exactly what the others have.
    const { news, caughtUp } = await readInOrganisation(this.db, organisationId, async (tx) => {
      const caughtUp: [Listener, ChangesSince][] = [];
      for (const [listener, since] of [...room.newcomers]) caughtUp.push([listener, await changesSince(tx, since)]);
      return { news: await changesSince(tx, room.position), caughtUp };
    });
    room.position = news.position;
    room.silentLooks = news.changes?.length === 0 ? room.silentLooks + 1 : 0;
    if (room.silentLooks === 0 || room.silentLooks % SILENT_LOOKS === 0) for (const each of told) each.next(news);
    for (const [listener, missed] of caughtUp) {
      // Who left during the look is in neither list any more.
      if (!room.newcomers.delete(listener)) continue;
      room.listeners.add(listener);
      listener.next(missed);
    }
  }
}
