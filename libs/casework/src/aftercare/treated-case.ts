import { localDate } from '@archwright/calendar';
import { RequestInvalidError } from '@archwright/platform';
import { CaseArch, Clinic, type TreatmentCase } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { requireCase } from '../cases/case-access.js';
import { WrongStateError } from '../errors.js';

/** A case whose aftercare is written down. */
export interface TreatedCase {
  readonly treatmentCase: TreatmentCase;
  readonly zone: string;
  /** The clinic's date. */
  readonly today: string;
}

export async function clinicDay(tx: EntityManager, { homeClinicId }: TreatmentCase, now: Date): Promise<TreatedDay> {
  const { zone } = await tx.findOneByOrFail(Clinic, { id: homeClinicId });
  return { zone, today: localDate(now.getTime(), zone) };
}

type TreatedDay = Pick<TreatedCase, 'zone' | 'today'>;

/**
 * The case, locked until the transaction ends. Its version does not rise: aftercare changes nothing that is planned.
 *
 * @throws {RecordNotFoundError} for a case unknown here or outside the actor's clinics
 * @throws {WrongStateError} after the patient's death
 */
export async function lockTreatedCase(
  tx: EntityManager,
  actor: Actor,
  caseId: string,
  now: Date,
): Promise<TreatedCase> {
  await requireCase(tx, actor, caseId);
  await tx.query('SELECT FROM treatment_case WHERE id = $1 FOR UPDATE', [caseId]);
  const treatmentCase = await requireCase(tx, actor, caseId);
  if (treatmentCase.state === 'ended-by-death')
    throw new WrongStateError(`Case ${treatmentCase.number}`, treatmentCase.state, 'a case of a living patient');
  return { treatmentCase, ...(await clinicDay(tx, treatmentCase, now)) };
}

/** @throws {RequestInvalidError} for a jaw that the case does not treat */
export async function requireArch(tx: EntityManager, caseId: string, arch: 'upper' | 'lower'): Promise<void> {
  const arches = await tx.findBy(CaseArch, { caseId });
  if (arches.some((each) => each.arch === arch)) return;
  const accepted = arches.map((each) => each.arch).join(', ');
  throw new RequestInvalidError([{ path: 'arch', problem: 'is not part of this case', accepted }]);
}

/** @throws {RequestInvalidError} for a date before `from` or after `until` */
export function requireBetween(path: string, on: string, from: string | null, until: string): void {
  if ((from === null || on >= from) && on <= until) return;
  const accepted = from === null ? `a date up to ${until}` : `a date from ${from} to ${until}`;
  throw new RequestInvalidError([{ path, problem: 'does not fit', accepted }]);
}
