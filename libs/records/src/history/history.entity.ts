import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** Filled by the database and read by `changesSince` alone. The default is written as the schema builder reads it: without casts. */
const BY_DATABASE = {
  default: () => '((pg_current_xact_id()))',
  select: false,
  insert: false,
  update: false,
} as const;

/** One line of a case's history. Append-only. */
@Entity('case_event')
export class CaseEvent extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('integer') sequence!: number;
  @Column('text') kind!: string;
  @Column('jsonb') body!: object;
  @Column('uuid', { nullable: true }) actorId!: string | null;
  @Column('timestamptz', { default: () => 'now()' }) happenedAt!: Date;
  @Column('bigint', BY_DATABASE) writtenIn!: string;
}

/** A side effect to come, written in the transaction of its cause. The payload holds ids only. */
@Entity('outbox')
export class Outbox extends TenantRow {
  @Column('text') kind!: string;
  @Column('jsonb') payload!: object;
  @Column('timestamptz', { default: () => 'now()' }) dueAt!: Date;
  @Column('timestamptz', { nullable: true }) dispatchedAt!: Date | null;
  @Column('integer', { default: 0 }) attempts!: number;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
  /** Null when the service acted by itself. */
  @Column('text', { nullable: true }) requestId!: string | null;
}

/** Who did what. Immutable; carries ids, never identity. */
@Entity('audit_entry')
export class AuditEntry extends TenantRow {
  @Column('timestamptz', { default: () => 'now()' }) happenedAt!: Date;
  @Column('uuid', { nullable: true }) actorId!: string | null;
  @Column('text') action!: string;
  @Column('text') subjectKind!: string;
  @Column('uuid', { nullable: true }) subjectId!: string | null;
  @Column('text', { nullable: true }) requestId!: string | null;
  @Column('jsonb') details!: object;
  @Column('bigint', BY_DATABASE) writtenIn!: string;
}

/** An entry that waits for its seal, under its own id. Noted by the database itself. */
@Entity('audit_unsealed')
export class AuditUnsealed extends TenantRow {}

/** One link of the hash chain over committed audit entries. */
@Entity('audit_seal')
export class AuditSeal extends TenantRow {
  @Column('integer') sequence!: number;
  @Column('uuid') entryId!: string;
  @Column('text') previousHash!: string;
  @Column('text') hash!: string;
  @Column('timestamptz', { default: () => 'now()' }) sealedAt!: Date;
}
