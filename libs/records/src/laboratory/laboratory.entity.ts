import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** The organisation's own laboratory, or an independent one that it orders from. */
@Entity('laboratory')
export class Laboratory extends TenantRow {
  @Column('text') name!: string;
  @Column('text') zone!: string;
  @Column('text') cutOffLocal!: string;
  /** ISO 8601 weekdays, Monday 1. */
  @Column('integer', { array: true }) closedWeekdays!: number[];
  /** The tenant behind an independent laboratory; null for an own one. */
  @Column('uuid', { nullable: true }) partnerOrganisationId!: string | null;
  @Column('integer', { default: 1 }) version!: number;
}

/** A kind of bench work in one laboratory. */
@Entity('work_centre')
export class WorkCentre extends TenantRow {
  @Column('uuid') laboratoryId!: string;
  @Column('text') code!: string;
  @Column('text') name!: string;
  /** What runs together on one place; null where each step runs alone. */
  @Column('text', { nullable: true }) batchKind!: 'curing-cycle' | 'print-plate' | null;
  @Column('integer', { nullable: true }) batchSize!: number | null;
  @Column('integer', { default: 1 }) version!: number;
}

/** One numbered place of a work centre. */
@Entity('bench_place')
export class BenchPlace extends TenantRow {
  @Column('uuid') workCentreId!: string;
  @Column('integer') number!: number;
  @Column('text') label!: string;
}

/** A courier between one clinic and one laboratory; its departures are calendar rules. */
@Entity('courier')
export class Courier extends TenantRow {
  @Column('uuid') clinicId!: string;
  @Column('uuid') laboratoryId!: string;
  @Column('text') name!: string;
  @Column('integer') toLabMinutes!: number;
  @Column('integer') toClinicMinutes!: number;
  /** Null while it runs. */
  @Column('timestamptz', { nullable: true }) retiredAt!: Date | null;
  @Column('integer', { default: 1 }) version!: number;
}
