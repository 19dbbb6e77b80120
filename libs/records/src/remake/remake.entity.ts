import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** Something has to be made again, and where to go back to. */
@Entity('remake_alert')
export class RemakeAlert extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('uuid') stageId!: string;
  /** Null when a person raised it. */
  @Column('uuid', { nullable: true }) checkVerdictId!: string | null;
  @Column('text') trigger!: string;
  @Column('text') reason!: string;
  @Column('text') returnToStage!: string;
  @Column('text', { array: true }) arches!: ('upper' | 'lower')[];
  @Column('text', { array: true }) discards!: string[];
  @Column('text') state!: 'open' | 'planned' | 'accepted' | 'dismissed';
  @Column('text', { nullable: true }) noProposalReason!: string | null;
  @Column('timestamptz', { nullable: true }) decideBy!: Date | null;
  @Column('timestamptz', { default: () => 'now()' }) raisedAt!: Date;
  @Column('uuid', { nullable: true }) raisedBy!: string | null;
  @Column('timestamptz', { nullable: true }) decidedAt!: Date | null;
  @Column('uuid', { nullable: true }) decidedBy!: string | null;
  @Column('text', { nullable: true }) decisionReason!: string | null;
  @Column('integer', { default: 1 }) version!: number;
}

/** A plan that would repair an alert; nothing moves until a person accepts it. */
@Entity('replan_proposal')
export class ReplanProposal extends TenantRow {
  @Column('uuid') alertId!: string;
  @Column('uuid') planId!: string;
  @Column('text') planHash!: string;
  @Column('text') label!: string;
  @Column('integer') movedVisits!: number;
  @Column('integer') leastMovedVisits!: number;
  @Column('integer') otherCases!: number;
  @Column('jsonb') ripples!: object[];
  @Column('jsonb') calls!: object[];
  @Column('text') state!: 'open' | 'accepted' | 'superseded';
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
}
