import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

const HAS_TIME = 'starts_at, ends_at, laboratory_id';
const NEEDS_NONE = `'unplanned', 'rejected', 'discarded'`;

/**
 * Each side's own rows about an order that stands between two organisations, under the order's id: the practice knows the
 * case that it is for, the laboratory the bench time that it takes there. What was sent stays as it was sent, and each
 * party can only say what is its own to say, whatever the application does.
 */
export class LabOrders1795605120000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE sent_order (${TENANT_KEY},
        case_id uuid NOT NULL,
        stage_id uuid NOT NULL,
        laboratory_id uuid NOT NULL,
        sent_by uuid NOT NULL,
        taken_version integer NOT NULL DEFAULT 1,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, laboratory_id) REFERENCES laboratory,
        FOREIGN KEY (organisation_id, sent_by) REFERENCES user_account);
      CREATE INDEX sent_order_by_case ON sent_order (organisation_id, case_id);
      ${keepApart('sent_order')}

      CREATE TABLE received_order (${TENANT_KEY},
        accepted_at timestamptz NOT NULL,
        accepted_by uuid NOT NULL,
        FOREIGN KEY (organisation_id, accepted_by) REFERENCES user_account);
      ${keepApart('received_order')}

      ALTER TABLE occupancy
        ADD COLUMN received_order_id uuid,
        ADD FOREIGN KEY (organisation_id, received_order_id) REFERENCES received_order;
      CREATE INDEX occupancy_by_received_order ON occupancy (organisation_id, received_order_id)
        WHERE received_order_id IS NOT NULL;

      ALTER TABLE lab_step
        ADD COLUMN order_id uuid,
        ADD FOREIGN KEY (organisation_id, order_id) REFERENCES sent_order,
        DROP CONSTRAINT lab_step_planned_has_time,
        ADD CONSTRAINT lab_step_planned_has_time CHECK (
          num_nonnulls(${HAS_TIME}) = 3 AND num_nonnulls(work_centre_id, order_id) > 0 OR state IN (${NEEDS_NONE}));
      CREATE INDEX lab_step_by_order ON lab_step (organisation_id, order_id) WHERE order_id IS NOT NULL;

      CREATE UNIQUE INDEX lab_exchange_one_live_per_stage ON lab_exchange
        (practice_organisation_id, case_number, (order_document ->> 'stage'), (order_document ->> 'round'))
        WHERE state IN ('ordered', 'accepted');
      CREATE FUNCTION keep_lab_exchange() RETURNS trigger LANGUAGE plpgsql AS $$
      DECLARE
        party uuid := current_setting('app.organisation_id')::uuid;
      BEGIN
        IF (NEW.id, NEW.practice_organisation_id, NEW.laboratory_organisation_id, NEW.case_number, NEW.order_document,
            NEW.needed_by, NEW.created_at) IS DISTINCT FROM
           (OLD.id, OLD.practice_organisation_id, OLD.laboratory_organisation_id, OLD.case_number, OLD.order_document,
            OLD.needed_by, OLD.created_at) THEN
          RAISE EXCEPTION 'lab_exchange: an order stays as it was sent';
        END IF;
        IF NEW.state = 'withdrawn' THEN
          IF party <> OLD.practice_organisation_id OR OLD.state NOT IN ('ordered', 'accepted')
             OR NEW.promised_at IS DISTINCT FROM OLD.promised_at THEN
            RAISE EXCEPTION 'lab_exchange: only the practice withdraws, and only a live order';
          END IF;
        ELSIF party <> OLD.laboratory_organisation_id
          OR (OLD.state, NEW.state) NOT IN (('ordered', 'accepted'), ('ordered', 'declined'), ('accepted', 'accepted'),
            ('accepted', 'declined'), ('accepted', 'finished')) THEN
          RAISE EXCEPTION 'lab_exchange: only the laboratory answers, and only a live order';
        END IF;
        RETURN NEW;
      END $$;
      CREATE TRIGGER lab_exchange_kept BEFORE UPDATE ON lab_exchange FOR EACH ROW EXECUTE FUNCTION keep_lab_exchange()`);
  }

  /** Work that is out at another organisation waits to be planned again. The walls stand aside for that moment. */
  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      DROP TRIGGER lab_exchange_kept ON lab_exchange; DROP FUNCTION keep_lab_exchange();
      DROP INDEX lab_exchange_one_live_per_stage;
      ALTER TABLE lab_step NO FORCE ROW LEVEL SECURITY;
      ALTER TABLE occupancy NO FORCE ROW LEVEL SECURITY`);
    await db.query(`
      UPDATE lab_step SET state = 'unplanned', laboratory_id = NULL, starts_at = NULL, ends_at = NULL, started_at = NULL
        WHERE order_id IS NOT NULL AND work_centre_id IS NULL AND state NOT IN (${NEEDS_NONE});
      DELETE FROM occupancy WHERE received_order_id IS NOT NULL`);
    await db.query(`
      ALTER TABLE lab_step
        DROP CONSTRAINT lab_step_planned_has_time, DROP COLUMN order_id,
        ADD CONSTRAINT lab_step_planned_has_time CHECK (
          num_nonnulls(${HAS_TIME}, work_centre_id) = 4 OR state IN (${NEEDS_NONE}));
      ALTER TABLE lab_step FORCE ROW LEVEL SECURITY;
      ALTER TABLE occupancy DROP COLUMN received_order_id;
      ALTER TABLE occupancy FORCE ROW LEVEL SECURITY;
      DROP TABLE received_order; DROP TABLE sent_order`);
  }
}
