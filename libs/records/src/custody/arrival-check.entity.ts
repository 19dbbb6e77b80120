import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** Whether the laboratory's work for a visit is there in time. One row per visit as it is timed. */
@Entity('arrival_check')
export class ArrivalCheck extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('uuid') stageId!: string;
  @Column('uuid') appointmentId!: string;
  @Column('integer') appointmentSequence!: number;
  @Column('text') state!: 'on-its-way' | 'arrived' | 'open' | 'decided' | 'withdrawn';
  /** Titles of what is not there. */
  @Column('text', { array: true, default: () => `'{}'` }) missing!: string[];
  @Column('text', { nullable: true }) reason!: string | null;
  /** When to look again while it is undecided. */
  @Column('timestamptz') lookAt!: Date;
  @Column('timestamptz', { nullable: true }) raisedAt!: Date | null;
  @Column('uuid', { nullable: true }) callTaskId!: string | null;
  @Column('text', { nullable: true }) decision!: 'wait' | 'move' | null;
  @Column('text', { nullable: true }) decisionNote!: string | null;
  @Column('timestamptz', { nullable: true }) decidedAt!: Date | null;
  @Column('uuid', { nullable: true }) decidedBy!: string | null;
  @Column('integer', { default: 1 }) version!: number;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
}
