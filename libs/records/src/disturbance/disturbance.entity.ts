import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** What falls away between two instants. Exactly one thing is named. */
@Entity('disturbance')
export class Disturbance extends TenantRow {
  @Column('uuid', { nullable: true }) resourceId!: string | null;
  @Column('uuid', { nullable: true }) clinicId!: string | null;
  @Column('uuid', { nullable: true }) workCentreId!: string | null;
  @Column('uuid', { nullable: true }) laboratoryId!: string | null;
  /** Its runs do not take place. */
  @Column('uuid', { nullable: true }) courierId!: string | null;
  /** The work is not ready before the end. */
  @Column('uuid', { nullable: true }) labStepId!: string | null;
  /** The visit is lost, and its patient cannot come before the end. */
  @Column('uuid', { nullable: true }) appointmentId!: string | null;
  /** The closure that it comes of, whose time is closed already. */
  @Column('uuid', { nullable: true }) closureId!: string | null;
  @Column('timestamptz') startsAt!: Date;
  @Column('timestamptz') endsAt!: Date;
  @Column('text') reason!: string;
  @Column('text') state!: 'open' | 'planned' | 'accepted' | 'kept' | 'withdrawn';
  @Column('text', { nullable: true }) noProposalReason!: string | null;
  @Column('timestamptz', { default: () => 'now()' }) enteredAt!: Date;
  @Column('uuid', { nullable: true }) enteredBy!: string | null;
  @Column('timestamptz', { nullable: true }) decidedAt!: Date | null;
  @Column('uuid', { nullable: true }) decidedBy!: string | null;
  @Column('integer', { default: 1 }) version!: number;
}

/** New plans of several cases that go together; all of them are booked, or none. */
@Entity('disturbance_proposal')
export class DisturbanceProposal extends TenantRow {
  @Column('uuid') disturbanceId!: string;
  @Column('text') planHash!: string;
  @Column('text') label!: string;
  @Column('text') rung!: string;
  @Column('integer') movedVisits!: number;
  @Column('integer') leastMovedVisits!: number;
  /** Cases that make room although nothing of theirs fell away. */
  @Column('integer') otherCases!: number;
  /** Cases that no plan was found for: a person decides about them. */
  @Column('uuid', { array: true }) leftCaseIds!: string[];
  @Column('jsonb') ripples!: object[];
  @Column('text') state!: 'open' | 'accepted' | 'superseded';
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
}
