import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** One intent to remind: per visit, channel and lead time. */
@Entity('reminder')
export class Reminder extends TenantRow {
  @Column('uuid') appointmentId!: string;
  @Column('text') channel!: 'mail' | 'phone';
  @Column('integer') leadMinutes!: number;
  @Column('text') messageId!: string;
  @Column('timestamptz') dueAt!: Date;
  @Column('text') state!: 'scheduled' | 'sent' | 'withdrawn' | 'failed';
  /** Sequence of the appointment that this reminder speaks of. */
  @Column('integer', { default: 0 }) sequence!: number;
  @Column('integer', { default: 0 }) attempts!: number;
  @Column('timestamptz', { nullable: true }) sentAt!: Date | null;
  @Column('text', { nullable: true }) lastError!: string | null;
}

/** A message that follows a change at once. */
@Entity('notice')
export class Notice extends TenantRow {
  @Column('text') kind!: string;
  @Column('text') recipient!: 'patient' | 'clinic' | 'laboratory' | 'clinician';
  @Column('uuid', { nullable: true }) patientId!: string | null;
  @Column('uuid', { nullable: true }) userId!: string | null;
  @Column('uuid', { nullable: true }) clinicId!: string | null;
  @Column('uuid', { nullable: true }) laboratoryId!: string | null;
  @Column('uuid', { nullable: true }) caseId!: string | null;
  @Column('uuid', { nullable: true }) appointmentId!: string | null;
  @Column('uuid', { nullable: true }) alertId!: string | null;
  /** Sequence of the appointment that the notice speaks of. */
  @Column('integer', { default: 0 }) subjectSequence!: number;
  @Column('text') messageId!: string;
  @Column('text') state!: 'scheduled' | 'sent' | 'withdrawn' | 'failed';
  @Column('timestamptz', { default: () => 'now()' }) dueAt!: Date;
  @Column('integer', { default: 0 }) attempts!: number;
  @Column('timestamptz', { nullable: true }) sentAt!: Date | null;
  @Column('text', { nullable: true }) lastError!: string | null;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
}

/** A telephone call to make. */
@Entity('call_task')
export class CallTask extends TenantRow {
  @Column('uuid') patientId!: string;
  @Column('uuid', { nullable: true }) caseId!: string | null;
  @Column('uuid', { nullable: true }) appointmentId!: string | null;
  @Column('uuid', { nullable: true }) reminderId!: string | null;
  @Column('uuid', { nullable: true }) alertId!: string | null;
  @Column('text') reason!: string;
  /** The reason by its code; null for a call that was asked for before reasons had one. */
  @Column('jsonb', { nullable: true }) told!: object | null;
  @Column('text') state!: 'open' | 'done';
  @Column('timestamptz') dueAt!: Date;
  @Column('integer', { default: 1 }) version!: number;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
}

/** One attempt of a call and its outcome. */
@Entity('call_attempt')
export class CallAttempt extends TenantRow {
  @Column('uuid') callTaskId!: string;
  @Column('text') outcome!: 'reached' | 'no-answer' | 'left-message' | 'asks-to-move' | 'declined';
  @Column('timestamptz', { default: () => 'now()' }) attemptedAt!: Date;
  @Column('uuid') attemptedBy!: string;
}
