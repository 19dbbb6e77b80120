import type { EntityManager } from 'typeorm';
import { uuidv7 } from '../uuidv7.js';

/** The next case number of a year, such as `26-0147`. Openers of one organisation wait for each other; none is lost. */
export async function nextCaseNumber(tx: EntityManager, year: number): Promise<string> {
  const [counter]: { last_number: number }[] = await tx.query(
    `INSERT INTO case_number_counter AS counter (id, year, last_number) VALUES ($1, $2, 1)
     ON CONFLICT (organisation_id, year) DO UPDATE SET last_number = counter.last_number + 1
     RETURNING last_number`,
    [uuidv7(), year],
  );
  if (counter === undefined) throw new Error('The case number counter returned no row.');
  return `${String(year % 100).padStart(2, '0')}-${String(counter.last_number).padStart(4, '0')}`;
}
