import type { DataSource } from 'typeorm';
import { inOrganisation, type Work } from './in-organisation.js';

/** Carries a result out of a transaction that is undone. */
class Undone extends Error {
  constructor(readonly result: unknown) {
    super('undone on purpose');
  }
}

/** Like `inOrganisation`, but undone as a whole unless `isKept` says that the result may stay: for trials. */
export async function attemptInOrganisation<Result>(
  db: DataSource,
  organisationId: string,
  work: Work<Result>,
  isKept: (result: Result) => boolean,
): Promise<Result> {
  try {
    return await inOrganisation(db, organisationId, async (tx) => {
      const result = await work(tx);
      if (!isKept(result)) throw new Undone(result);
      return result;
    });
  } catch (error) {
    if (error instanceof Undone) return error.result as Result; // thrown above, with the result of this very work
    throw error;
  }
}
