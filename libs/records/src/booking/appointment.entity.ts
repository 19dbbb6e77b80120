import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** A visit with its chair and people. */
@Entity('appointment')
export class Appointment extends TenantRow {
  @Column('uuid') patientId!: string;
  @Column('uuid') clinicId!: string;
  /** Null for a visit at the patient's home. */
  @Column('uuid', { nullable: true }) chairId!: string | null;
  @Column('uuid') clinicianId!: string;
  @Column('uuid', { nullable: true }) assistantId!: string | null;
  @Column('uuid', { nullable: true }) holdId!: string | null;
  @Column('timestamptz') startsAt!: Date;
  @Column('timestamptz') endsAt!: Date;
  @Column('integer', { default: 0 }) travelBeforeMinutes!: number;
  @Column('integer', { default: 0 }) travelAfterMinutes!: number;
  @Column('text') state!:
    'held' | 'provisional' | 'booked' | 'arrived' | 'in-progress' | 'completed' | 'cancelled' | 'missed';
  @Column('text', { nullable: true }) stateReason!: string | null;
  /** Stable identifier in calendar files. */
  @Column('text') uid!: string;
  /** Raised whenever the visit moves or is cancelled. */
  @Column('integer', { default: 0 }) sequence!: number;
  @Column('timestamptz', { nullable: true }) confirmedByPatientAt!: Date | null;
  @Column('timestamptz', { nullable: true }) arrivedAt!: Date | null;
  @Column('timestamptz', { nullable: true }) startedAt!: Date | null;
  @Column('timestamptz', { nullable: true }) finishedAt!: Date | null;
  @Column('integer', { default: 1 }) version!: number;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
}

/** A stage that an appointment serves. */
@Entity('appointment_stage')
export class AppointmentStage extends TenantRow {
  @Column('uuid') appointmentId!: string;
  @Column('uuid') stageId!: string;
}

/** A visit at the patient's home or care home. */
@Entity('home_visit')
export class HomeVisit extends TenantRow {
  @Column('uuid') appointmentId!: string;
  @Column('text') placeKind!: 'home' | 'care-home';
  /** Both ways together. */
  @Column('integer') travelBlockMinutes!: number;
}
