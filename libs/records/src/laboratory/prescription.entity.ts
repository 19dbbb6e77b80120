import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** The signed hand-over of a stage to the laboratory. */
@Entity('prescription')
export class Prescription extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('uuid') stageId!: string;
  @Column('uuid', { nullable: true }) laboratoryId!: string | null;
  @Column('jsonb') content!: object;
  @Column('uuid') signedBy!: string;
  @Column('timestamptz', { default: () => 'now()' }) signedAt!: Date;
  @Column('timestamptz', { nullable: true }) supersededAt!: Date | null;
}

/** A question that stops a step's clock and escalates when nobody answers. */
@Entity('lab_question')
export class LabQuestion extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('uuid') labStepId!: string;
  @Column('text') question!: string;
  @Column('timestamptz', { default: () => 'now()' }) askedAt!: Date;
  @Column('uuid') askedBy!: string;
  @Column('timestamptz') escalatesAt!: Date;
  @Column('timestamptz', { nullable: true }) escalatedAt!: Date | null;
  @Column('text', { nullable: true }) answer!: string | null;
  @Column('timestamptz', { nullable: true }) answeredAt!: Date | null;
  @Column('uuid', { nullable: true }) answeredBy!: string | null;
}
