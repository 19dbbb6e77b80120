import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** A sore place of the mucosa, by region and date. */
@Entity('sore_spot')
export class SoreSpot extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('text') arch!: 'upper' | 'lower';
  @Column('text') region!: string;
  @Column('text') side!: 'left' | 'right' | 'midline';
  @Column('date') foundOn!: string;
  @Column('uuid') foundBy!: string;
  /** As the patient says, 0 (none) to 10. */
  @Column('integer') pain!: number;
  @Column('text') suspectedCause!: string;
  @Column('date', { nullable: true }) resolvedOn!: string | null;
  @Column('text', { nullable: true }) note!: string | null;
  @Column('integer', { default: 1 }) version!: number;
}

/** Something changed on a denture after placement. */
@Entity('adjustment')
export class Adjustment extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('uuid', { nullable: true }) stageId!: string | null;
  @Column('uuid', { nullable: true }) soreSpotId!: string | null;
  @Column('text') arch!: 'upper' | 'lower';
  @Column('text') surface!: 'border' | 'fitting-surface' | 'polished-surface' | 'occlusal-surface';
  @Column('text') what!: string;
  /** In words: nobody measures what a bur takes off. */
  @Column('text') amount!: string;
  @Column('timestamptz', { default: () => 'now()' }) doneAt!: Date;
  @Column('uuid') doneBy!: string;
}

/** A spot that did not heal in time: refer or say why not. */
@Entity('referral_task')
export class ReferralTask extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('uuid', { nullable: true }) soreSpotId!: string | null;
  @Column('text') reason!: string;
  @Column('date') dueOn!: string;
  @Column('text') state!: 'open' | 'referred' | 'declined' | 'resolved';
  @Column('timestamptz', { nullable: true }) decidedAt!: Date | null;
  @Column('uuid', { nullable: true }) decidedBy!: string | null;
  @Column('text', { nullable: true }) decisionNote!: string | null;
  @Column('integer', { default: 1 }) version!: number;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
}

/** A later check that is due but not booked with the plan. */
@Entity('recall')
export class Recall extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('text') kind!: string;
  @Column('date') dueOn!: string;
  @Column('text') state!: 'due' | 'booked' | 'done' | 'declined' | 'withdrawn';
  @Column('uuid', { nullable: true }) appointmentId!: string | null;
  /** Why it was declined, or is due on another day than the rule says; null when neither. */
  @Column('text', { nullable: true }) reason!: string | null;
  @Column('integer', { default: 1 }) version!: number;
}

/** A case handed to another clinic, inside the organisation or outside. */
@Entity('transfer')
export class Transfer extends TenantRow {
  @Column('uuid') caseId!: string;
  @Column('uuid') fromClinicId!: string;
  @Column('uuid', { nullable: true }) toClinicId!: string | null;
  @Column('text', { nullable: true }) toName!: string | null;
  @Column('text') reason!: string;
  @Column('text') state!: 'proposed' | 'accepted' | 'declined' | 'withdrawn';
  @Column('timestamptz', { default: () => 'now()' }) proposedAt!: Date;
  @Column('uuid') proposedBy!: string;
  @Column('timestamptz', { nullable: true }) decidedAt!: Date | null;
  @Column('uuid', { nullable: true }) decidedBy!: string | null;
  @Column('text', { nullable: true }) decisionReason!: string | null;
  @Column('integer', { default: 1 }) version!: number;
}
