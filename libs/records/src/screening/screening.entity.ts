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

/**
 * What screening compares: one number per capture and subject, read or worked out from what was read. Made again from the
 * readings, never typed.
 */
@Entity('stage_value')
export class StageValue extends TenantRow {
  @Column('uuid') captureId!: string;
  @Column('uuid') stageId!: string;
  @Column('uuid') patientId!: string;
  @Column('uuid', { nullable: true }) clinicId!: string | null;
  @Column('uuid') recordedBy!: string;
  @Column('timestamptz') recordedAt!: Date;
  /** The same for values that may be compared. */
  @Column('text') subject!: string;
  @Column('text') code!: string;
  @Column('text', { nullable: true }) arch!: 'upper' | 'lower' | null;
  @Column('text', { nullable: true }) side!: 'right' | 'left' | null;
  @Column('text', { nullable: true }) region!: string | null;
  @Column('jsonb', { nullable: true }) method!: Record<string, string> | null;
  @Column('double precision') value!: number;
  /** What it was taken with; null where nobody said. */
  @Column('uuid', { nullable: true }) deviceId!: string | null;
}

/** What stands out, beside what it was compared with. Supports judgement; nothing waits for it. */
@Entity('screening_finding')
export class ScreeningFinding extends TenantRow {
  /** Names what was found where; the same found again is the same row. */
  @Column('text') effect!: string;
  @Column('text') kind!: 'value' | 'drift' | 'share';
  @Column('text') comparedWith!:
    | 'own-change'
    | 'clinic'
    | 'organisation'
    | 'own-series'
    | 'clinic-series'
    | 'device-series'
    | 'laboratories'
    | 'laboratory-series'
    | 'work-centre-series';
  @Column('integer') groupSize!: number;
  /** Of the measurement; null for a share. */
  @Column('text', { nullable: true }) code!: string | null;
  @Column('uuid', { nullable: true }) captureId!: string | null;
  @Column('uuid', { nullable: true }) stageId!: string | null;
  /** Whose people see it; null where it is not a clinic's. */
  @Column('uuid', { nullable: true }) clinicId!: string | null;
  @Column('uuid', { nullable: true }) laboratoryId!: string | null;
  @Column('uuid', { nullable: true }) workCentreId!: string | null;
  @Column('uuid', { nullable: true }) deviceId!: string | null;
  /** The only person who sees it: whose own readings it is about. */
  @Column('uuid', { nullable: true }) forUserId!: string | null;
  @Column('jsonb') evidence!: object;
  @Column('text') sentence!: string;
  @Column('timestamptz') foundAt!: Date;
  @Column('timestamptz', { nullable: true }) seenAt!: Date | null;
  @Column('uuid', { nullable: true }) seenBy!: string | null;
  @Column('integer', { default: 1 }) version!: number;
}
