import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** Something to mind with a patient; in force until it is ended. */
@Entity('patient_caution')
export class PatientCaution extends TenantRow {
  @Column('uuid') patientId!: string;
  @Column('text') kind!: 'material-allergy' | 'swallowing' | 'bleeding' | 'jaw-bone' | 'other';
  /** Of an allergy, else null. */
  @Column('text', { nullable: true }) material!: string | null;
  @Column('text', { nullable: true }) note!: string | null;
  @Column('timestamptz', { default: () => 'now()' }) recordedAt!: Date;
  @Column('uuid') recordedBy!: string;
  /** Null while it is in force. */
  @Column('timestamptz', { nullable: true }) endedAt!: Date | null;
  @Column('uuid', { nullable: true }) endedBy!: string | null;
  @Column('text', { nullable: true }) endReason!: string | null;
  @Column('integer', { default: 1 }) version!: number;
}
