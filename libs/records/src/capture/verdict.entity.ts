import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** What one rule says of one capture. Superseded by a later one, never rewritten. */
@Entity('check_verdict')
export class CheckVerdict extends TenantRow {
  @Column('uuid') captureId!: string;
  @Column('uuid') stageId!: string;
  @Column('text') rule!: string;
  @Column('text') ruleVersion!: string;
  @Column('text', { nullable: true }) arch!: 'upper' | 'lower' | null;
  @Column('text') verdict!: 'pass' | 'caution' | 'fail';
  @Column('text') action!: 'go-on' | 'correct-in-chair' | 'repeat' | 'return-to-stage';
  @Column('text') reason!: string;
  @Column('text', { nullable: true }) valueShown!: string | null;
  @Column('text', { nullable: true }) limitShown!: string | null;
  @Column('text') source!: string;
  @Column('text') standing!: string;
  @Column('text', { nullable: true }) caution!: string | null;
  @Column('timestamptz', { default: () => 'now()' }) decidedAt!: Date;
  @Column('timestamptz', { nullable: true }) supersededAt!: Date | null;
}

/** A clinician's logged reason to go on although a gate is open. */
@Entity('gate_override')
export class GateOverride extends TenantRow {
  @Column('uuid') stageId!: string;
  @Column('text') gate!: string;
  @Column('text') reason!: string;
  /** Rules whose failed checks were set aside with it; empty where none had failed. */
  @Column('text', { array: true, default: () => "'{}'" }) rules!: string[];
  @Column('timestamptz', { default: () => 'now()' }) overriddenAt!: Date;
  @Column('uuid') overriddenBy!: string;
}

/** A finding that came after its visit: pauses the next point of no return until a clinician answers. */
@Entity('finding_pause')
export class FindingPause extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('uuid') stageId!: string;
  @Column('uuid', { nullable: true }) checkVerdictId!: string | null;
  @Column('text') pointOfNoReturn!: string;
  @Column('text') reason!: string;
  @Column('timestamptz') answerBy!: Date;
  @Column('text') state!: 'open' | 'go-on' | 'return' | 'yielded';
  @Column('timestamptz', { nullable: true }) answeredAt!: Date | null;
  @Column('uuid', { nullable: true }) answeredBy!: string | null;
  @Column('text', { nullable: true }) answer!: string | null;
  @Column('integer', { default: 1 }) version!: number;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
}

/** Everything was judged again because a rule or the practice's ranges changed: once for each state of both. */
@Entity('check_edition')
export class CheckEdition extends TenantRow {
  /** Of the rules' versions and the practice's ranges. */
  @Column('text') fingerprint!: string;
  @Column('timestamptz') startedAt!: Date;
  /** Null while stages are left. */
  @Column('timestamptz', { nullable: true }) finishedAt!: Date | null;
  @Column('integer', { default: 0 }) stagesJudged!: number;
  @Column('integer', { default: 0 }) verdictsChanged!: number;
}
