import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** What was recorded at one stage in one go. */
@Entity('capture')
export class Capture extends TenantRow {
  @Column('uuid') stageId!: string;
  @Column('uuid', { nullable: true }) clinicId!: string | null;
  /** At which chair; null for a visit at home and for one without a booking. */
  @Column('uuid', { nullable: true }) chairId!: string | null;
  /** What it was taken with, one for each kind of reading at most. */
  @Column('uuid', { array: true, default: () => "'{}'" }) deviceIds!: string[];
  @Column('jsonb') otherCentricRelation!: object[];
  @Column('timestamptz', { default: () => 'now()' }) recordedAt!: Date;
  @Column('uuid') recordedBy!: string;
  /** Null until the background check has run. */
  @Column('timestamptz', { nullable: true }) checkedAt!: Date | null;
  @Column('timestamptz', { nullable: true }) supersededAt!: Date | null;
  /** Null until its values were compared with others. */
  @Column('timestamptz', { nullable: true }) screenedAt!: Date | null;
}

/** One reading, in its unit; exactly one of the three values is set. */
@Entity('measurement')
export class Measurement extends TenantRow {
  @Column('uuid') captureId!: string;
  @Column('uuid') stageId!: string;
  @Column('text') code!: string;
  @Column('integer', { default: 1 }) reading!: number;
  @Column('double precision', { nullable: true }) valueNumber!: number | null;
  @Column('text', { nullable: true }) valueText!: string | null;
  @Column('boolean', { nullable: true }) valueBoolean!: boolean | null;
  @Column('text', { nullable: true }) unit!: string | null;
  @Column('text', { nullable: true }) arch!: 'upper' | 'lower' | null;
  @Column('text', { nullable: true }) side!: 'right' | 'left' | null;
  @Column('text', { nullable: true }) region!: string | null;
  @Column('jsonb', { nullable: true }) method!: Record<string, string> | null;
  @Column('timestamptz', { default: () => 'now()' }) recordedAt!: Date;
  @Column('uuid') recordedBy!: string;
}

/** One needle-point tracing: what is known of it, and where it was drawn its points with their evaluation. */
@Entity('tracing')
export class Tracing extends TenantRow {
  @Column('uuid') captureId!: string;
  @Column('uuid') stageId!: string;
  @Column('integer') attempt!: number;
  @Column('jsonb') entry!: object;
  /** Some hundreds to thousands, read for the drawing alone. */
  @Column('jsonb', { nullable: true, select: false }) points!: object | null;
  @Column('jsonb', { nullable: true }) evaluation!: object | null;
  @Column('timestamptz', { default: () => 'now()' }) recordedAt!: Date;
}

/** A checklist line done at a stage, with the count where one is asked for. */
@Entity('checklist_mark')
export class ChecklistMark extends TenantRow {
  @Column('uuid') stageId!: string;
  @Column('text') code!: string;
  @Column('boolean') done!: boolean;
  @Column('integer', { nullable: true }) count!: number | null;
  @Column('timestamptz', { default: () => 'now()' }) markedAt!: Date;
  @Column('uuid') markedBy!: string;
}
