import type { OpenCase } from '@archwright/contracts';
import type { CaseChain } from '@archwright/protocol';
import { CaseArch, TreatmentPathWithdrawal, uuidv7 } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import { WrongStateError } from '../errors.js';
import { chainOf, loadPaths } from './chain.js';

/**
 * The chain that these paths would make.
 *
 * @throws {RecordNotFoundError} for a version that is not published here
 * @throws {WrongStateError} for one that new cases may no longer follow
 * @throws {ArchesNotCombinableError} when the two paths don't go together, or a path is not made for the arch
 */
export async function chainToPin(tx: EntityManager, arches: OpenCase['arches']): Promise<CaseChain> {
  const versionIds = arches.map(({ pathVersionId }) => pathVersionId);
  const withdrawn = await tx.existsBy(TreatmentPathWithdrawal, { pathVersionId: In(versionIds) });
  if (withdrawn) throw new WrongStateError('A treatment path version', 'withdrawn', 'one that is published');
  return chainOf(arches, await loadPaths(tx, versionIds), []);
}

/** The versions that a case follows, in the place of those it followed before. */
export async function pinPaths(
  tx: EntityManager,
  caseId: string,
  arches: OpenCase['arches'],
  provisional: boolean,
): Promise<void> {
  await tx.delete(CaseArch, { caseId });
  await tx.insert(
    CaseArch,
    arches.map(({ arch, pathVersionId }) => ({ id: uuidv7(), caseId, arch, pathVersionId, provisional })),
  );
}
