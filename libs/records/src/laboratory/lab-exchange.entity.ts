import { Column, Entity, PrimaryColumn } from 'typeorm';

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
