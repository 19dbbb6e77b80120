import {
  Organisation,
  createDataSource,
  listOrganisations,
  readInOrganisation,
  verifyAudit,
  type AuditVerification,
} from '@archwright/records';
import { UsageError, callersPath, readArguments } from './arguments.js';
import { findDatabase } from './start/find-database.js';
import { UndoList } from './start/undo-list.js';

const USAGE = 'npm run --silent cli -- audit verify [--data FOLDER]';

const PROBLEMS: Readonly<Record<NonNullable<AuditVerification['broken']>['problem'], string>> = {
  'entry-changed': 'was changed after it was sealed',
  'chain-broken': 'is sealed to another one than the entry before it',
  'seal-missing': 'follows a seal that was taken out',
};

/** Recomputes the audit chain of every organisation; ends with 1 when one of them does not hold. */
export async function auditCommand(args: readonly string[]): Promise<number> {
  const { values, positionals } = readArguments(args, USAGE, { data: { type: 'string', default: '.data' } });
  if (positionals.length !== 1 || positionals[0] !== 'verify') {
    throw new UsageError(`The audit trail can be verified; "${positionals.join(' ')}" is not known.`, USAGE);
  }
  const undo = new UndoList();
  try {
    return (await verifyAll(await findDatabase(callersPath(values.data), undo))) ? 0 : 1;
  } finally {
    await undo.undo();
  }
}

/** @returns whether every chain holds */
async function verifyAll(url: string): Promise<boolean> {
  const db = await createDataSource({ url, applicationName: 'archwright-audit', connections: 1 }).initialize();
  try {
    let holds = true;
    for (const id of await listOrganisations(db)) {
      await readInOrganisation(db, id, async (tx) => {
        const { name } = await tx.findOneByOrFail(Organisation, { id });
        const verification = await verifyAudit(tx);
        process.stdout.write(`${name}: ${told(verification)}\n`);
        holds &&= verification.broken === null && verification.lost === 0;
      });
    }
    return holds;
  } finally {
    await db.destroy();
  }
}

/** The head lets a reader who kept an earlier one see that the end was not cut off. */
function told({ sealed, unsealed, lost, head, broken }: AuditVerification): string {
  if (broken !== null) {
    return `BROKEN at entry ${String(broken.sequence)} of the chain: ${broken.entryId} ${PROBLEMS[broken.problem]}.`;
  }
  if (lost > 0) return `BROKEN: ${String(lost)} entries are neither sealed nor waiting for their seal.`;
  return `the chain holds, ${String(sealed)} entries sealed, ${String(unsealed)} waiting for their seal, head ${head}.`;
}
