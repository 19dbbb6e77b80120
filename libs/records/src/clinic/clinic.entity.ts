import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** A place with chairs, in its own time zone. */
@Entity('clinic')
export class Clinic extends TenantRow {
  @Column('text') name!: string;
  @Column('text') zone!: string;
  @Column('text') address!: string;
  /** Null: messages name the clinic instead. */
  @Column('text', { nullable: true }) phone!: string | null;
  @Column('integer', { default: 0 }) travelMinutes!: number;
  @Column('integer', { default: 1 }) version!: number;
}

/** What serves one at a time; a chair, person, kit, patient or bench place has the id of its resource. */
@Entity('resource')
export class Resource extends TenantRow {
  @Column('text') kind!: 'chair' | 'clinician' | 'assistant' | 'kit' | 'patient' | 'place';
  @Column('text') label!: string;
  /** Null while it can be booked. */
  @Column('timestamptz', { nullable: true }) retiredAt!: Date | null;
  @Column('integer', { default: 1 }) version!: number;
}

/** A dental chair. */
@Entity('chair')
export class Chair extends TenantRow {
  @Column('uuid') clinicId!: string;
  @Column('text') label!: string;
  @Column('boolean', { default: false }) wheelchairRoom!: boolean;
}

/** A clinician or an assistant. */
@Entity('practitioner')
export class Practitioner extends TenantRow {
  @Column('text') role!: 'clinician' | 'assistant';
  @Column('text') name!: string;
  @Column('text', { array: true }) skills!: string[];
}

/** Where a practitioner works. */
@Entity('practitioner_clinic')
export class PractitionerClinic extends TenantRow {
  @Column('uuid') practitionerId!: string;
  @Column('uuid') clinicId!: string;
}

/** A shared set of instruments, out of use for a while after each visit. */
@Entity('kit')
export class Kit extends TenantRow {
  @Column('uuid') clinicId!: string;
  @Column('text') code!: string;
  @Column('integer') reprocessingMinutes!: number;
}
