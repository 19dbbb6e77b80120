import { Column, Entity } from 'typeorm';
import { TenantRow } from '../tenancy/tenant-row.js';

/** A published treatment path. Never changed: a new version is a new row. */
@Entity('treatment_path_version')
export class TreatmentPathVersion extends TenantRow {
  @Column('text') code!: string;
  @Column('integer') version!: number;
  @Column('jsonb') document!: object;
  @Column('text') documentHash!: string;
  @Column('timestamptz', { default: () => 'now()' }) publishedAt!: Date;
  @Column('uuid', { nullable: true }) publishedBy!: string | null;
}

/** A path version that new cases may no longer pin. */
@Entity('treatment_path_withdrawal')
export class TreatmentPathWithdrawal extends TenantRow {
  @Column('uuid') pathVersionId!: string;
  @Column('timestamptz', { default: () => 'now()' }) withdrawnAt!: Date;
  @Column('uuid', { nullable: true }) withdrawnBy!: string | null;
}
