import type { ChangeMeasurementRanges } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { checkSettings, measurementByCode, type PracticeOverlay } from '@archwright/measures';
import { RequestInvalidError, requireVersion, type FieldProblem } from '@archwright/platform';
import { MeasurementSettings, Organisation, recordAudit, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { SHIPPED_VERSION, overlayInForce } from './overlay-in-force.js';

/**
 * Keeps a practice's own ranges and limits as a new version; the ones before stay on record.
 *
 * @throws {RequestInvalidError} naming every range that reaches past what is possible and every limit that is fixed
 */
export async function changeMeasurementRanges(
  tx: EntityManager,
  actor: Actor,
  { version, usual, limits, reason }: ChangeMeasurementRanges & { version: number },
  now: Date,
): Promise<void> {
  const changedBy = personOf(actor, 'Ranges are changed by a person.');
  // Nobody else gives out the next number meanwhile.
  await tx.findOneOrFail(Organisation, { where: { id: actor.organisationId }, lock: { mode: 'pessimistic_write' } });
  const current = (await overlayInForce(tx))?.version ?? SHIPPED_VERSION;
  requireVersion(version, current);
  const problems = problemsOf({ usual, limits });
  if (problems.length > 0) throw new RequestInvalidError(problems);
  const id = uuidv7();
  await tx.insert(MeasurementSettings, {
    id,
    version: current + 1,
    usual: Object.fromEntries(Object.entries(usual).map(([key, range]) => [fullKey(key), range])),
    limits,
    reason,
    changedAt: now,
    changedBy,
  });
  await recordAudit(tx, {
    actorId: changedBy,
    action: 'change-measurement-ranges',
    subjectKind: 'measurement-settings',
    subjectId: id,
    details: { version: current + 1, usual, limits },
    at: now,
  });
}

/** Each range and limit tried by itself, so that all that is wrong is named at once. */
function problemsOf({ usual, limits }: Pick<ChangeMeasurementRanges, 'usual' | 'limits'>): FieldProblem[] {
  return [
    ...Object.entries(usual).flatMap(([key, range]) => refused(`usual.${key}`, { usual: { [key]: range } })),
    ...Object.entries(limits).flatMap(([code, value]) => refused(`limits.${code}`, { limits: { [code]: value } })),
  ];
}

function refused(path: string, part: Omit<PracticeOverlay, 'version'>): FieldProblem[] {
  try {
    checkSettings({ version: SHIPPED_VERSION, ...part });
    return [];
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return [{ path, problem: error.message }];
  }
}

/** Kept under the measurement's full code, however it was asked for. */
function fullKey(key: string): string {
  const [code = '', ...group] = key.split('/');
  return [measurementByCode(code).code, ...group].join('/');
}
