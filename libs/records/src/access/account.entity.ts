import { Column, Entity, PrimaryColumn } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** A person who signs in. Empty `clinicIds` or `laboratoryIds` mean none, not all. */
@Entity('user_account')
export class UserAccount extends TenantRow {
  @Column('text') name!: string;
  @Column('text') role!: 'front-desk' | 'lab' | 'clinician' | 'manager' | 'administrator';
  @Column('text') passwordHash!: string;
  @Column('text', { nullable: true }) mail!: string | null;
  @Column('text') locale!: string;
  @Column('uuid', { array: true }) clinicIds!: string[];
  @Column('uuid', { array: true }) laboratoryIds!: string[];
  /** The person's own resource; null for everyone who does not treat. */
  @Column('uuid', { nullable: true }) practitionerId!: string | null;
  @Column('timestamptz', { nullable: true }) disabledAt!: Date | null;
  @Column('integer', { default: 1 }) version!: number;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
}

/** A signed-in browser. Only the digest of its token is stored. */
@Entity('session')
export class Session extends TenantRow {
  @Column('uuid') userId!: string;
  @Column('text') tokenHash!: string;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
  @Column('timestamptz', { default: () => 'now()' }) lastSeenAt!: Date;
  @Column('timestamptz') expiresAt!: Date;
}

/** Failures of one name or address, by digest. Outside row-level security: no organisation is known yet. */
@Entity('sign_in_attempt')
export class SignInAttempt {
  @PrimaryColumn('text') readonly subjectHash!: string;
  @Column('integer') failures!: number;
  @Column('timestamptz') firstFailedAt!: Date;
  @Column('timestamptz', { nullable: true }) blockedUntil!: Date | null;
}

/** The answer to a creating call, kept for its repeats. */
@Entity('idempotency_key')
export class IdempotencyKey extends TenantRow {
  @Column('uuid') actorId!: string;
  @Column('text') route!: string;
  @Column('text') key!: string;
  @Column('text') bodyHash!: string;
  /** Null: what the route answers by itself. */
  @Column('integer', { nullable: true }) status!: number | null;
  @Column('json', { nullable: true }) response!: object | null;
  @Column('text', { nullable: true }) etag!: string | null;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
}
