import { PrimaryColumn } from 'typeorm';

/** Key of every row that belongs to an organisation. */
export abstract class TenantRow {
  /** Left out on insert: the database fills in the organisation of the transaction. (Without casts, as TypeORM compares it.) */
  @PrimaryColumn('uuid', { default: () => `(current_setting('app.organisation_id'))` })
  readonly organisationId!: string;

  @PrimaryColumn('uuid') readonly id!: string;
}
