import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** One version of the choice of teeth of a case; the highest is in force. Texts are empty where nothing was said. */
@Entity('tooth_choice')
export class ToothChoice extends TenantRow {
  @Column('uuid') caseId!: string;
  /** Visit at which it was settled. */
  @Column('uuid') stageId!: string;
  @Column('integer') version!: number;
  /** The patient's wish in the practice's own words. */
  @Column('text') wish!: string;
  @Column('text') arrangement!: string;
  @Column('text') shade!: string;
  @Column('text') mould!: string;
  /** Null while nobody has decided. */
  @Column('text', { nullable: true }) decidedBy!:
    'patient' | 'companion-with-permission' | 'legal-representative' | null;
  /** Tooth widths of the old denture, casts or earlier photographs. */
  @Column('jsonb') measured!: { target: string; object: string; valueMm: number }[];
  @Column('timestamptz') recordedAt!: Date;
  @Column('uuid') recordedBy!: string;
}
