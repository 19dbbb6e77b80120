import { Column, Entity, PrimaryColumn } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** An order from a practice to an independent laboratory: seen by both organisations, without the patient's identity. */
@Entity('lab_exchange')
export class LabExchange {
  @PrimaryColumn('uuid') readonly id!: string;
  @Column('uuid') practiceOrganisationId!: string;
  @Column('uuid') laboratoryOrganisationId!: string;
  @Column('text') caseNumber!: string;
  @Column('jsonb') orderDocument!: object;
  @Column('timestamptz') neededBy!: Date;
  @Column('text') state!: 'ordered' | 'accepted' | 'declined' | 'withdrawn' | 'finished';
  @Column('timestamptz', { nullable: true }) promisedAt!: Date | null;
  @Column('text', { nullable: true }) declineReason!: string | null;
  @Column('integer', { default: 1 }) version!: number;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
}

/** What the practice knows of an order that it sent, under the order's id. */
@Entity('sent_order')
export class SentOrder extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('uuid') stageId!: string;
  @Column('uuid') laboratoryId!: string;
  @Column('uuid') sentBy!: string;
  /** The version of the order that the case knows of. */
  @Column('integer', { default: 1 }) takenVersion!: number;
}

/** What the laboratory knows of an order that it accepted, under the order's id; its bench time points here. */
@Entity('received_order')
export class ReceivedOrder extends TenantRow {
  @Column('timestamptz') acceptedAt!: Date;
  @Column('uuid') acceptedBy!: string;
}
