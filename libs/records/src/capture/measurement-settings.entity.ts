import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** One version of a practice's own usual ranges and limits. Written once; the highest version is in force. */
@Entity('measurement_settings')
export class MeasurementSettings extends TenantRow {
  @Column('integer') version!: number;
  @Column('jsonb') usual!: Record<string, { min: number; max: number }>;
  @Column('jsonb') limits!: Record<string, number>;
  @Column('text') reason!: string;
  @Column('timestamptz') changedAt!: Date;
  @Column('uuid') changedBy!: string;
}
