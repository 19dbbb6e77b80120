import { DomainError } from '@archwright/kernel';

/** The service was given a login that row-level security does not bind. */
export class DatabaseLoginRefusedError extends DomainError {
  constructor(login: string, reasons: readonly string[]) {
    super(
      'platform.database-login-refused',
      `The login "${login}" in DATABASE_URL ${reasons.join(' and ')}, so the walls between organisations would not hold. ` +
        'Give a login that is neither SUPERUSER nor BYPASSRLS and owns nothing; the provisioning step makes one from ' +
        'DATABASE_URL when DATABASE_ADMIN_URL is set.',
      { login, reasons },
    );
  }
}

/** The answer's rows of one statement, whatever library runs it. */
export type QueryRows = (sql: string) => Promise<readonly Record<string, unknown>[]>;

/**
 * Refuses to go on with a login that could see every organisation.
 *
 * @throws {DatabaseLoginRefusedError} for SUPERUSER, BYPASSRLS, or the owner of a table, a schema or the database
 */
export async function requireHarmlessLogin(query: QueryRows): Promise<void> {
  const [found] = await query(`
    SELECT current_user AS login, r.rolsuper AS is_superuser, r.rolbypassrls AS bypasses,
      EXISTS (SELECT FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
              WHERE n.nspname NOT LIKE 'pg\\_%' AND n.nspname <> 'information_schema'
                AND pg_has_role(r.oid, c.relowner, 'MEMBER'))
      OR EXISTS (SELECT FROM pg_database d WHERE d.datname = current_database() AND pg_has_role(r.oid, d.datdba, 'MEMBER'))
      AS owns
    FROM pg_roles r WHERE r.rolname = current_user`);
  if (!found) throw new Error('The database does not know the login that it let in.');
  const reasons = [
    ...(found.is_superuser === true ? ['is SUPERUSER'] : []),
    ...(found.bypasses === true ? ['has BYPASSRLS'] : []),
    ...(found.owns === true ? ['owns the database or a table in it'] : []),
  ];
  if (reasons.length > 0) throw new DatabaseLoginRefusedError(String(found.login), reasons);
}
