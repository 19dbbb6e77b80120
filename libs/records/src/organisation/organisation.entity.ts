import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { OrganisationSettings } from './organisation-settings.js';

/** The tenant: a practice or an independent laboratory. */
@Entity('organisation')
export class Organisation {
  @PrimaryColumn('uuid') readonly id!: string;
  @Column('text') name!: string;
  @Column('text') kind!: 'practice' | 'laboratory';
  @Column('text') locale!: string;
  @Column('jsonb') settings!: OrganisationSettings;
  @Column('integer', { default: 1 }) version!: number;
  @Column('timestamptz', { default: () => 'now()' }) createdAt!: Date;
}

/** Finds the organisation of a sign-in name, and lists organisations for background sweeps. Outside row-level security. */
@Entity('directory')
export class Directory {
  @PrimaryColumn('uuid') readonly id!: string;
  @Column('text') kind!: 'organisation' | 'sign-in';
  @Column('uuid') organisationId!: string;
  /** Lower case; null on the row that lists the organisation itself. */
  @Column({ type: 'text', nullable: true, collation: 'C' }) signInName!: string | null;
  @Column('uuid', { nullable: true }) userId!: string | null;
}
