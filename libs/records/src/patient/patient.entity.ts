import type { Wishes } from '@archwright/contracts';
import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** A patient without identity; what planning needs to know. */
@Entity('patient')
export class Patient extends TenantRow {
  @Column('text') zone!: string;
  @Column('text') locale!: string;
  @Column('uuid', { array: true }) acceptedClinicIds!: string[];
  @Column('jsonb') wishes!: Wishes;
  /** Null: no limit. */
  @Column('integer', { nullable: true }) chairMinutesPerDay!: number | null;
  @Column('boolean', { default: false }) companionPermitted!: boolean;
  @Column('text', { nullable: true }) interpreter!: string | null;
  @Column('boolean', { default: false }) wheelchairRoom!: boolean;
  @Column('integer', { default: 0 }) travelMinutes!: number;
  @Column('date', { nullable: true }) diedOn!: string | null;
  @Column('integer', { default: 1 }) version!: number;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
}

/** Who a patient is. Erased on its own, so that history and its hashes stay valid. */
@Entity('patient_identity')
export class PatientIdentity extends TenantRow {
  @Column('uuid') patientId!: string;
  @Column('text') givenName!: string;
  @Column('text') familyName!: string;
  @Column('date') birthOn!: string;
  /** For published ranges that differ; null where it is not stated. */
  @Column('text', { nullable: true }) sex!: 'female' | 'male' | null;
  @Column('text', { nullable: true }) mail!: string | null;
  @Column('text', { nullable: true }) phone!: string | null;
  @Column('text', { nullable: true }) address!: string | null;
  /** How to get in for a visit at home: a key, a ward, a bell. */
  @Column('text', { nullable: true }) accessNote!: string | null;
  @Column('text', { nullable: true }) companionName!: string | null;
  @Column('text', { nullable: true }) companionPhone!: string | null;
  /** The patient's key in the file it came from; null when typed in. */
  @Column('text', { nullable: true }) importKey!: string | null;
  /** Family and given name in lower case; compared by `>=` and `<` in byte order. */
  @Column({ type: 'text', collation: 'C' }) searchKey!: string;
}

/** The name from one of its words on, as it is searched; goes when the identity goes. */
@Entity('patient_name_key')
export class PatientNameKey extends TenantRow {
  @Column('uuid') patientId!: string;
  @Column({ type: 'text', collation: 'C' }) searchKey!: string;
}

/** The patient's consent to one channel, in a stated wording. */
@Entity('consent')
export class Consent extends TenantRow {
  @Column('uuid') patientId!: string;
  @Column('text') channel!: 'mail' | 'phone';
  @Column('timestamptz') givenAt!: Date;
  @Column('timestamptz', { nullable: true }) withdrawnAt!: Date | null;
  @Column('text') wordingVersion!: string;
  @Column('uuid', { nullable: true }) recordedBy!: string | null;
}
