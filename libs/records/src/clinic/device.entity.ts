import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** What a clinic measures with, under its own name: a caliper, a plane guide, a tracing set. */
@Entity('device')
export class Device extends TenantRow {
  @Column('uuid') clinicId!: string;
  @Column('text') name!: string;
  @Column('text') measures!: 'lengths' | 'angles' | 'tracings';
  /** Null while it is in use. */
  @Column('timestamptz', { nullable: true }) retiredAt!: Date | null;
  @Column('integer', { default: 1 }) version!: number;
}
