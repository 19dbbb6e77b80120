import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** A computed plan with what it takes to compute it again. */
@Entity('plan')
export class Plan extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('text') kind!: 'offer' | 'booking' | 'ripple' | 'proposal';
  @Column('text') label!: string;
  @Column('jsonb') document!: object;
  @Column('text') planHash!: string;
  @Column('text') instanceHash!: string;
  /** Versions of the aggregates that the plan was computed from, by id. */
  @Column('jsonb') basedOn!: object;
  @Column('text') codeVersion!: string;
  @Column('integer') seed!: number;
  @Column('integer') streams!: number;
  @Column('integer') epochs!: number;
  @Column('jsonb') objective!: object;
  /** Null when no lower bound was computed. */
  @Column('jsonb', { nullable: true }) bound!: object | null;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
  @Column('uuid', { nullable: true }) createdBy!: string | null;
}

/** Time kept for one case: minutes on the telephone, or a day or two while someone is asked. */
@Entity('hold')
export class Hold extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('uuid') planId!: string;
  @Column('text') kind!: 'phone' | 'provisional';
  @Column('text') state!: 'active' | 'confirmed' | 'released' | 'expired';
  @Column('timestamptz') expiresAt!: Date;
  @Column('integer', { default: 1 }) version!: number;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
  @Column('uuid', { nullable: true }) createdBy!: string | null;
}
