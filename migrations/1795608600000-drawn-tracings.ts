import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Points and their evaluation stand or fall together: a drawing is made from both, as they were kept. */
export class DrawnTracings1795608600000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE tracing
        ADD CONSTRAINT tracing_points_with_evaluation CHECK ((points IS NULL) = (evaluation IS NULL)),
        ADD CONSTRAINT tracing_points_are_a_list CHECK (jsonb_typeof(points) = 'array');
      CREATE INDEX tracing_by_stage ON tracing (organisation_id, stage_id)`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      DROP INDEX tracing_by_stage;
      ALTER TABLE tracing
        DROP CONSTRAINT tracing_points_are_a_list,
        DROP CONSTRAINT tracing_points_with_evaluation`);
  }
}
