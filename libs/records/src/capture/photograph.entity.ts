import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** A photograph of a visit, or what is left of one that was taken away. */
@Entity('photograph')
export class Photograph extends TenantRow {
  @Column('uuid') stageId!: string;
  @Column('text') caption!: string;
  @Column('integer') widthPx!: number;
  @Column('integer') heightPx!: number;
  /** A JPEG file, read only where it is asked for; null once it was taken away. */
  @Column('bytea', { nullable: true, select: false }) picture!: Buffer | null;
  @Column('timestamptz') recordedAt!: Date;
  @Column('uuid') recordedBy!: string;
  @Column('timestamptz', { nullable: true }) removedAt!: Date | null;
  @Column('uuid', { nullable: true }) removedBy!: string | null;
  @Column('text', { nullable: true }) removalReason!: string | null;
}
