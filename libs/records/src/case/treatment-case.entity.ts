import type { Wishes } from '@archwright/contracts';
import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** One patient's treatment from the first question to recall. */
@Entity('treatment_case')
export class TreatmentCase extends TenantRow {
  @Column('text') number!: string;
  @Column('uuid') patientId!: string;
  @Column('text') state!: 'enquiry' | 'open' | 'paused' | 'transferred' | 'abandoned' | 'closed' | 'ended-by-death';
  @Column('text', { nullable: true }) stateReason!: string | null;
  @Column('date', { nullable: true }) reviewOn!: string | null;
  @Column('date', { nullable: true }) consentOn!: string | null;
  @Column('date', { nullable: true }) treatmentApprovedOn!: string | null;
  @Column('date', { nullable: true }) medicinesAskedOn!: string | null;
  @Column('uuid', { nullable: true }) parentCaseId!: string | null;
  @Column('uuid') homeClinicId!: string;
  @Column('uuid', { array: true }) clinicIds!: string[];
  /** Null: any clinician with the skills. */
  @Column('uuid', { nullable: true }) clinicianId!: string | null;
  @Column('jsonb') wishes!: Wishes;
  /** Where the visits are that may be made outside the clinic. */
  @Column('text', { default: 'clinic' }) visitPlace!: 'clinic' | 'home' | 'care-home';
  /** The clinician's way there, each way; null at the clinic. */
  @Column('integer', { nullable: true }) homeTravelMinutes!: number | null;
  @Column('integer', { default: 1 }) version!: number;
  @Column('timestamptz', { default: () => 'now()' }) openedAt!: Date;
  @Column('timestamptz', { nullable: true }) closedAt!: Date | null;
}

/** The path that one arch of a case follows. */
@Entity('case_arch')
export class CaseArch extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('text') arch!: 'upper' | 'lower';
  @Column('uuid') pathVersionId!: string;
  /** True until the clinician decides after an enquiry. */
  @Column('boolean', { default: false }) provisional!: boolean;
}

/** One visit of a case's path, once per round. */
@Entity('stage')
export class Stage extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('text') code!: string;
  @Column('integer') position!: number;
  @Column('integer', { default: 1 }) round!: number;
  @Column('text', { array: true }) arches!: ('upper' | 'lower')[];
  @Column('text') state!: 'waiting' | 'planned' | 'ready' | 'in-progress' | 'passed' | 'repeated' | 'dropped';
  /** For later reviews, which are due but not booked with the plan. */
  @Column('date', { nullable: true }) dueOn!: string | null;
  @Column('timestamptz', { nullable: true }) completedAt!: Date | null;
  @Column('uuid', { nullable: true }) completedBy!: string | null;
  @Column('text', { nullable: true }) note!: string | null;
  @Column('integer', { default: 1 }) version!: number;
}

/** Last case number of a year. */
@Entity('case_number_counter')
export class CaseNumberCounter extends TenantRow {
  @Column('integer') year!: number;
  @Column('integer') lastNumber!: number;
}
