import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** A thing that changes hands, under its code. */
@Entity('custody_object')
export class CustodyObject extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('text') code!: string;
  @Column('text') kind!:
    | 'impression'
    | 'cast'
    | 'base'
    | 'rim'
    | 'old-denture'
    | 'tracing-plate'
    | 'jaw-relation-record'
    | 'trial-denture'
    | 'denture'
    | 'scan-file'
    | 'other';
  @Column('text', { nullable: true }) arch!: 'upper' | 'lower' | null;
  @Column('integer', { default: 1 }) round!: number;
  @Column('text') holder!: 'patient' | 'clinic' | 'courier' | 'laboratory' | 'nobody';
  @Column('uuid', { nullable: true }) clinicId!: string | null;
  @Column('uuid', { nullable: true }) laboratoryId!: string | null;
  @Column('text', { nullable: true }) place!: string | null;
  @Column('timestamptz', { nullable: true }) useBy!: Date | null;
  @Column('text') state!:
    'expected' | 'in-use' | 'packed' | 'in-transit' | 'quarantined' | 'given-to-patient' | 'discarded' | 'lost';
  @Column('text', { nullable: true }) stateReason!: string | null;
  @Column('integer', { default: 1 }) version!: number;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
  /** When it came to its holder from elsewhere; null while it has not left the place where it was made. */
  @Column('timestamptz', { nullable: true }) arrivedAt!: Date | null;
}

/** Objects travelling together. */
@Entity('parcel')
export class Parcel extends TenantRow {
  @Column('uuid', { nullable: true }) courierLegId!: string | null;
  @Column('uuid') clinicId!: string;
  @Column('uuid') laboratoryId!: string;
  @Column('text') direction!: 'to-lab' | 'to-clinic';
  @Column('text') state!: 'packed' | 'handed-over' | 'received' | 'reconciled';
  @Column('timestamptz') packedAt!: Date;
  @Column('uuid') packedBy!: string;
  @Column('timestamptz', { nullable: true }) handedOverAt!: Date | null;
  @Column('timestamptz', { nullable: true }) receivedAt!: Date | null;
  @Column('uuid', { nullable: true }) receivedBy!: string | null;
  @Column('timestamptz', { nullable: true }) reconciledAt!: Date | null;
  @Column('uuid', { nullable: true }) reconciledBy!: string | null;
  @Column('integer', { default: 1 }) version!: number;
  @Column('uuid', { nullable: true }) handedOverBy!: string | null;
  /** Who carries it, as the sender says; null while it is packed. */
  @Column('text', { nullable: true }) carrier!: string | null;
}

/** One object of a parcel and what was found on arrival. */
@Entity('parcel_object')
export class ParcelObject extends TenantRow {
  @Column('uuid') parcelId!: string;
  @Column('uuid') objectId!: string;
  /** Null until the parcel is reconciled. */
  @Column('text', { nullable: true }) found!: 'present' | 'missing' | 'unexpected' | 'damaged' | 'undeclared' | null;
  @Column('text', { nullable: true }) note!: string | null;
}

/** Somebody's word that something was disinfected before it left, with what and when: of a stage's work, or of one object. */
@Entity('disinfection_record')
export class DisinfectionRecord extends TenantRow {
  @Column('uuid', { nullable: true }) stageId!: string | null;
  @Column('uuid', { nullable: true }) objectId!: string | null;
  @Column('text') agent!: string;
  @Column('text', { nullable: true }) method!: string | null;
  @Column('timestamptz') disinfectedAt!: Date;
  @Column('uuid') recordedBy!: string;
}

/** A lot of material that went into a case. */
@Entity('material_lot')
export class MaterialLot extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('uuid', { nullable: true }) labStepId!: string | null;
  @Column('text') material!: string;
  @Column('text') lot!: string;
  @Column('date', { nullable: true }) expiresOn!: string | null;
  @Column('timestamptz', { default: () => 'now()' }) recordedAt!: Date;
  @Column('uuid') recordedBy!: string;
}
