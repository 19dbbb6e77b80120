import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** A search for better plans of a laboratory's work. What is planned stays as it is, however the search ends. */
@Entity('workload_run')
export class WorkloadRun extends TenantRow {
  @Column('uuid') laboratoryId!: string;
  @Column('text') state!: 'asked' | 'running' | 'finished' | 'cancelled' | 'failed';
  /** How far ahead work may move. */
  @Column('integer') weeks!: number;
  /** Time for all of its searches together. */
  @Column('integer') seconds!: number;
  @Column('integer') seed!: number;
  @Column('integer') streams!: number;
  /** Of the search that is under way, or was last. */
  @Column('integer', { default: 0 }) epochs!: number;
  /** Which kind of proposal it looks for; null before and after. */
  @Column('text', { nullable: true }) doing!: string | null;
  /** The best objective so far of that search. */
  @Column('jsonb', { nullable: true }) stands!: object | null;
  /** How the plan in force stands; null until it was looked at. */
  @Column('jsonb', { nullable: true }) before!: object | null;
  @Column('text', { nullable: true }) instanceHash!: string | null;
  /** What a person can do about it; null unless it failed. */
  @Column('text', { nullable: true }) failure!: string | null;
  @Column('timestamptz') askedAt!: Date;
  @Column('uuid', { nullable: true }) askedBy!: string | null;
  @Column('timestamptz', { nullable: true }) finishedAt!: Date | null;
  @Column('integer', { default: 1 }) version!: number;
}

/** A plan of a laboratory's work that is better in what its kind looks for, with what makes it the same again. */
@Entity('workload_proposal')
export class WorkloadProposal extends TenantRow {
  @Column('uuid') runId!: string;
  @Column('text') kind!: 'within-slack' | 'level-load' | 'overtime' | 'other-laboratory' | 'free-visits';
  /** What is booked when it is accepted, and the versions that it was computed from. */
  @Column('jsonb') moves!: object;
  /** What the coordinator is shown of it. */
  @Column('jsonb') shown!: object;
  @Column('integer') seed!: number;
  @Column('integer') streams!: number;
  @Column('integer') epochs!: number;
  @Column('jsonb') objective!: object;
  @Column('jsonb') bound!: object;
  @Column('text') state!: 'open' | 'accepted' | 'superseded';
  @Column('timestamptz', { nullable: true }) decidedAt!: Date | null;
  @Column('uuid', { nullable: true }) decidedBy!: string | null;
  @Column('integer', { default: 1 }) version!: number;
}
