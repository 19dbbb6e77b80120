/**
 * Set up before every end-to-end suite: a transaction asks one query after the other. A second one sent while the first
 * is answered waits in the driver, which calls that deprecated, but says so at the third and once per process only; here
 * the first one fails, where it is sent. Packages that do so outside transactions are left alone.
 */
import pg from 'pg';

/** What the driver's client keeps of the queries that were sent and not answered. */
interface SentQueries {
  readonly _activeQuery: object | null | undefined;
  readonly _queryQueue: readonly object[];
}

/** Takes the driver's client as it is: whatever it is called with is handed on untouched. */
type Query = (this: pg.Client, ...given: unknown[]) => unknown;

const client = pg.Client.prototype as unknown as { query: Query };
const { query } = client;

client.query = function oneAtATime(...given) {
  const { _activeQuery, _queryQueue } = this as unknown as SentQueries;
  // The end of a transaction that failed is let through: the connection goes back to the pool.
  const isAsked = this.getTransactionStatus() === 'T' && given[0] !== 'ROLLBACK';
  if (isAsked && (_activeQuery != null || _queryQueue.length > 0)) {
    throw new Error(
      'A transaction sent a query while it still waits for another one. Await each before the next (no Promise.all).',
    );
  }
  return query.apply(this, given);
};
