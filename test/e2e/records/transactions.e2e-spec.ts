import { inOrganisation, uuidv7 } from '@archwright/records';
import { openRecordsDatabase, type RecordsDatabase } from './records-database.js';

let db: RecordsDatabase;
beforeAll(async () => {
  db = await openRecordsDatabase();
});
afterAll(() => db.close());

it('fails a test whose transaction sends two queries at once', async () => {
  const both = inOrganisation(db.app, uuidv7(), (tx) => Promise.all([tx.query('SELECT 1'), tx.query('SELECT 2')]));
  await expect(both).rejects.toThrow('Await each before the next');
  const inTurn = inOrganisation(db.app, uuidv7(), async (tx): Promise<unknown[]> => {
    const first: unknown = await tx.query('SELECT 1');
    const second: unknown = await tx.query('SELECT 2');
    return [first, second];
  });
  await expect(inTurn).resolves.toHaveLength(2);
});
