import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** One part of a step on the time line, and whether it keeps the place taken. */
export interface PlannedSegment {
  readonly kind: 'hands-on' | 'set' | 'unattended';
  readonly startsAt: string;
  readonly endsAt: string;
  readonly holdsPlace: boolean;
}

/** One laboratory operation of a case, once per round. */
@Entity('lab_step')
export class LabStep extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('text') code!: string;
  @Column('text', { array: true }) arches!: ('upper' | 'lower')[];
  @Column('integer', { default: 1 }) round!: number;
  @Column('text') phase!: string;
  @Column('text') afterStage!: string;
  @Column('text') beforeStage!: string;
  @Column('uuid', { nullable: true }) laboratoryId!: string | null;
  @Column('uuid', { nullable: true }) workCentreId!: string | null;
  @Column('uuid', { nullable: true }) placeId!: string | null;
  @Column('uuid', { nullable: true }) batchId!: string | null;
  @Column('uuid', { nullable: true }) holdId!: string | null;
  @Column('timestamptz', { nullable: true }) startsAt!: Date | null;
  @Column('timestamptz', { nullable: true }) endsAt!: Date | null;
  @Column('jsonb') segments!: PlannedSegment[];
  @Column('text') state!:
    'unplanned' | 'planned' | 'ready' | 'started' | 'paused' | 'finished' | 'rejected' | 'discarded';
  @Column('text', { nullable: true }) stateReason!: string | null;
  @Column('timestamptz', { nullable: true }) startedAt!: Date | null;
  @Column('timestamptz', { nullable: true }) finishedAt!: Date | null;
  @Column('integer', { default: 1 }) version!: number;
  /** The order by which another organisation makes it; null for work of one's own benches. */
  @Column('uuid', { nullable: true }) orderId!: string | null;
}

/** One run of a machine that takes several cases' work; its time is an occupancy of the place. */
@Entity('batch')
export class Batch extends TenantRow {
  @Column('uuid') placeId!: string;
  @Column('text') kind!: 'curing-cycle' | 'print-plate';
  @Column('timestamptz') startsAt!: Date;
  @Column('timestamptz') endsAt!: Date;
  @Column('integer') size!: number;
  @Column('integer') used!: number;
}

/** A lab step that shares a batch. */
@Entity('batch_member')
export class BatchMember extends TenantRow {
  @Column('uuid') batchId!: string;
  @Column('uuid') labStepId!: string;
  @Column('integer') units!: number;
}

/** One way between clinic and laboratory; without courier when it goes as files. */
@Entity('courier_leg')
export class CourierLeg extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('uuid', { nullable: true }) courierId!: string | null;
  @Column('uuid', { nullable: true }) holdId!: string | null;
  @Column('text') direction!: 'to-lab' | 'to-clinic';
  @Column('text', { nullable: true }) afterStage!: string | null;
  @Column('text', { nullable: true }) beforeStage!: string | null;
  @Column('timestamptz') departsAt!: Date;
  @Column('timestamptz') arrivesAt!: Date;
  @Column('text') state!: 'planned' | 'under-way' | 'arrived' | 'cancelled';
}
