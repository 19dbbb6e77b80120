import type { SetupKind, SetupRecord } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';

export type RecordOf<Kind extends SetupKind> = Extract<SetupRecord, { kind: Kind }>;

/** On whose behalf and when a record is written. */
export interface Hand {
  readonly actor: Actor;
  readonly now: Date;
}

/** A record as it stands in the tables. */
export interface KeptRecord<Kind extends SetupKind> {
  readonly id: string;
  readonly version: number;
  readonly isRetired: boolean;
  readonly record: RecordOf<Kind>;
}

/** How one kind of record is read from its tables and written to them. */
export interface Keeper<Kind extends SetupKind> {
  /** Where its version is counted. */
  readonly table: 'clinic' | 'resource' | 'laboratory' | 'work_centre' | 'courier' | 'device' | 'closure';
  /** What can't change once it is there, since booked time or published paths rest on it. */
  readonly fixed: readonly (keyof RecordOf<Kind> & string)[];
  /** Whether it can be taken out of use without being forgotten. */
  readonly retires: boolean;
  list(tx: EntityManager): Promise<KeptRecord<Kind>[]>;
  insert(tx: EntityManager, id: string, record: RecordOf<Kind>, hand: Hand): Promise<void>;
  /** The version is counted by the caller. */
  replace(tx: EntityManager, id: string, record: RecordOf<Kind>, hand: Hand): Promise<void>;
}

/** A change that the record, or another one beside it, does not allow. */
export class SetupRefusedError extends DomainError {
  constructor(problem: string, accepted: string) {
    super('casework.setup-refused', `${problem} Accepted: ${accepted}.`, { accepted });
  }
}
