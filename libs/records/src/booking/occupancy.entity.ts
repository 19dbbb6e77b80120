import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** Held or booked time of one resource. The database, not this class, refuses two at once. */
@Entity('occupancy')
export class Occupancy extends TenantRow {
  @Column('uuid') resourceId!: string;
  @Column('timestamptz') startsAt!: Date;
  @Column('timestamptz') endsAt!: Date;
  @Column('text') purpose!: 'visit' | 'lab' | 'closure' | 'absence' | 'busy' | 'protected' | 'travel';
  @Column('uuid', { nullable: true }) holdId!: string | null;
  /** Null once booked. */
  @Column('timestamptz', { nullable: true }) heldUntil!: Date | null;
  @Column('uuid', { nullable: true }) appointmentId!: string | null;
  @Column('uuid', { nullable: true }) labStepId!: string | null;
  @Column('uuid', { nullable: true }) batchId!: string | null;
  @Column('uuid', { nullable: true }) closureId!: string | null;
  /** Work for another organisation, accepted here. */
  @Column('uuid', { nullable: true }) receivedOrderId!: string | null;
}
