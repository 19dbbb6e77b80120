/** The group role that every application login is a member of. It owns nothing and may only read and change rows. */
export const APPLICATION_ROLE = 'archwright_app';

/** The organisation of the current transaction. Raises an error when none is set: a query without a tenant fails closed. */
const CURRENT_ORGANISATION = `current_setting('app.organisation_id')::uuid`;

/**
 * First columns and key of every tenant table. The organisation leads the key, so that rows can be partitioned by it;
 * it defaults to the transaction's own, so that a writer can't name another by mistake.
 */
export const TENANT_KEY = `
  organisation_id uuid NOT NULL DEFAULT ${CURRENT_ORGANISATION} REFERENCES organisation (id),
  id uuid NOT NULL,
  PRIMARY KEY (organisation_id, id)`;

const ALL_ROWS = 'SELECT, INSERT, UPDATE, DELETE';

/** For tables whose rows are written once and never change. */
export const APPEND_ONLY = 'SELECT, INSERT';

/**
 * Forces row-level security on a table, by the organisation of the transaction, and grants the application its verbs.
 * Part of migrations that have run: a change here is a new migration, never an edit.
 */
export function keepApart(table: string, verbs = ALL_ROWS, column = 'organisation_id'): string {
  return `
    ALTER TABLE ${table} ENABLE ROW LEVEL SECURITY;
    ALTER TABLE ${table} FORCE ROW LEVEL SECURITY;
    CREATE POLICY ${table}_own_organisation ON ${table}
      USING (${column} = ${CURRENT_ORGANISATION}) WITH CHECK (${column} = ${CURRENT_ORGANISATION});
    GRANT ${verbs} ON ${table} TO ${APPLICATION_ROLE};`;
}

/** For a table that two organisations share: each sees the rows that name it, only the first-named column may insert. */
export function keepBetween(table: string, author: string, addressee: string): string {
  const either = `(${author} = ${CURRENT_ORGANISATION} OR ${addressee} = ${CURRENT_ORGANISATION})`;
  return `
    ALTER TABLE ${table} ENABLE ROW LEVEL SECURITY;
    ALTER TABLE ${table} FORCE ROW LEVEL SECURITY;
    CREATE POLICY ${table}_read ON ${table} FOR SELECT USING ${either};
    CREATE POLICY ${table}_author ON ${table} FOR INSERT WITH CHECK (${author} = ${CURRENT_ORGANISATION});
    CREATE POLICY ${table}_either_party ON ${table} FOR UPDATE USING ${either} WITH CHECK ${either};
    GRANT SELECT, INSERT, UPDATE ON ${table} TO ${APPLICATION_ROLE};`;
}
