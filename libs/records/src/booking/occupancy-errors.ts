import { DomainError } from '@archwright/kernel';

/** Time that was wanted and is taken. The label of a patient is never shown. */
export interface OccupancyConflict {
  readonly resourceId: string;
  readonly kind: string;
  readonly label: string | null;
  readonly startsAt: string;
  readonly endsAt: string;
}

/** Some of the time that was asked for is held or booked. Nothing was claimed. */
export class OccupancyConflictError extends DomainError {
  constructor(readonly conflicts: readonly OccupancyConflict[]) {
    const named = conflicts.slice(0, 3).map((each) => {
      const name = each.label === null ? each.kind : `${each.kind} "${each.label}"`;
      return `${name} from ${each.startsAt} to ${each.endsAt}`;
    });
    const more = conflicts.length > named.length ? ` and ${String(conflicts.length - named.length)} more` : '';
    super('records.occupied', `Already taken: ${named.join(', ')}${more}. Ask for offers again.`, { conflicts });
  }
}

export class OffGridError extends DomainError {
  constructor(startsAt: Date, endsAt: Date) {
    const [start, end] = [startsAt.toISOString(), endsAt.toISOString()];
    super(
      'records.off-grid',
      `${start} to ${end} can't be booked: start and end must be whole multiples of five minutes, the end later.`,
      { startsAt: start, endsAt: end },
    );
  }
}

export class HoldNotActiveError extends DomainError {
  constructor(holdId: string, state: string) {
    super(
      'records.hold-not-active',
      `The hold is ${state}; only an active one can be confirmed. Ask for offers again.`,
      {
        holdId,
        state,
      },
    );
  }
}

export class BatchFullError extends DomainError {
  constructor(batchId: string, free: number, units: number) {
    super(
      'records.batch-full',
      `The batch has room for ${String(free)} more, ${String(units)} were asked for. Choose another run.`,
      { batchId, free, units },
    );
  }
}
