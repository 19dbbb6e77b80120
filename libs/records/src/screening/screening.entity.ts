import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** One night's look over all series, once per organisation. */
@Entity('screening_night')
export class ScreeningNight extends TenantRow {
  @Column('date') nightOn!: string;
  @Column('timestamptz') startedAt!: Date;
  /** Null until it has run. */
  @Column('timestamptz', { nullable: true }) finishedAt!: Date | null;
}

/** What stands out, beside what it was compared with. Supports judgement; nothing waits for it. */
@Entity('screening_finding')
export class ScreeningFinding extends TenantRow {
  /** Names what was found where; the same found again is the same row. */
  @Column('text') effect!: string;
  @Column('text') kind!: 'value' | 'drift' | 'share';
  @Column('text') comparedWith!:
    'own-change' | 'clinic' | 'organisation' | 'own-series' | 'clinic-series' | 'laboratories';
  @Column('integer') groupSize!: number;
  /** Of the measurement; null for a share. */
  @Column('text', { nullable: true }) code!: string | null;
  @Column('uuid', { nullable: true }) captureId!: string | null;
  @Column('uuid', { nullable: true }) stageId!: string | null;
  /** Whose people see it; null where it is not a clinic's. */
  @Column('uuid', { nullable: true }) clinicId!: string | null;
  @Column('uuid', { nullable: true }) laboratoryId!: string | null;
  /** The only person who sees it: whose own readings it is about. */
  @Column('uuid', { nullable: true }) forUserId!: string | null;
  @Column('jsonb') evidence!: object;
  @Column('text') sentence!: string;
  @Column('timestamptz') foundAt!: Date;
  @Column('timestamptz', { nullable: true }) seenAt!: Date | null;
  @Column('uuid', { nullable: true }) seenBy!: string | null;
  @Column('integer', { default: 1 }) version!: number;
}
