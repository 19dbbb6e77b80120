import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** The central bearing screw of a tracing set. */
@Entity('bearing_screw')
export class BearingScrew extends TenantRow {
  @Column('uuid') kitId!: string;
  @Column('double precision') pitchMm!: number;
  /** Seen from the side of the screw's head. */
  @Column('text') raisesBy!: 'clockwise' | 'counter-clockwise';
  @Column('timestamptz') statedAt!: Date;
  /** Null where it came with the set-up of the practice. */
  @Column('uuid', { nullable: true }) statedBy!: string | null;
}
