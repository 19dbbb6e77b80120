import type { MigrationInterface, QueryRunner } from 'typeorm';
import { keepBetween } from './row-security.js';

/**
 * Orders from a practice to an independent laboratory: the only rows that two organisations see. It repeats what the
 * laboratory needs (case number, steps, dates) and no identity of the patient.
 */
export class LabExchange1795601760000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE lab_exchange (
        id uuid PRIMARY KEY,
        practice_organisation_id uuid NOT NULL REFERENCES organisation (id),
        laboratory_organisation_id uuid NOT NULL REFERENCES organisation (id),
        case_number text NOT NULL,
        order_document jsonb NOT NULL,
        needed_by timestamptz NOT NULL,
        state text NOT NULL CHECK (state IN ('ordered', 'accepted', 'declined', 'withdrawn', 'finished')),
        promised_at timestamptz,
        decline_reason text,
        version integer NOT NULL DEFAULT 1,
        created_at timestamptz NOT NULL DEFAULT now(),
        CONSTRAINT lab_exchange_two_parties CHECK (practice_organisation_id <> laboratory_organisation_id),
        CONSTRAINT lab_exchange_acceptance_has_date CHECK (state NOT IN ('accepted', 'finished') OR promised_at IS NOT NULL),
        CONSTRAINT lab_exchange_refusal_has_reason CHECK (state <> 'declined' OR decline_reason IS NOT NULL));
      CREATE INDEX lab_exchange_by_practice ON lab_exchange (practice_organisation_id, needed_by);
      CREATE INDEX lab_exchange_by_laboratory ON lab_exchange (laboratory_organisation_id, needed_by);
      ${keepBetween('lab_exchange', 'practice_organisation_id', 'laboratory_organisation_id')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE lab_exchange');
  }
}
