import type { ChangeCaseState } from '@archwright/contracts';
import type { CaseChain } from '@archwright/protocol';
import { LabStep, Stage, TreatmentCase, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { WrongStateError } from '../errors.js';
import { chainOf, loadChain, loadPaths, type LoadedChain } from './chain.js';
import { layOut } from './lay-out.js';
import { requireClinician } from './known-clinician.js';
import { chainToPin, pinPaths } from './pinned-paths.js';

/**
 * The treatment of an enquiry is decided: its paths are pinned for good, and the rest of the chain is laid out.
 *
 * @throws {RecordNotFoundError} for a clinician unknown here
 * @throws {WrongStateError} when the first visit began on a path that begins otherwise than the one decided on
 */
export async function decideTreatment(
  tx: EntityManager,
  caseId: string,
  decided: Pick<ChangeCaseState, 'arches' | 'clinicianId' | 'wishes'>,
): Promise<void> {
  const { chain: before, rows } = await loadChain(tx, caseId);
  const arches = decided.arches ?? rows.arches.map(({ arch, pathVersionId }) => ({ arch, pathVersionId }));
  const chain =
    decided.arches === undefined
      ? chainOf(
          arches,
          await loadPaths(
            tx,
            arches.map(({ pathVersionId }) => pathVersionId),
          ),
          [],
        )
      : await chainToPin(tx, decided.arches);
  await pinPaths(tx, caseId, arches, false);
  await settleWishes(tx, caseId, decided);
  const [first] = chain.stages;
  for (const row of rows.stages) {
    if (first === undefined) continue;
    requireSameBeginning(row, [before.stages[0], first]);
    const { code, position } = first;
    await tx.update(Stage, { id: row.id }, { code, position, arches: [...first.arches], version: row.version + 1 });
  }
  await layOut(tx, caseId, chain, rows.stages.length === 0 || first === undefined ? [] : [first]);
}

async function settleWishes(
  tx: EntityManager,
  caseId: string,
  { clinicianId, wishes }: Pick<ChangeCaseState, 'clinicianId' | 'wishes'>,
): Promise<void> {
  if (clinicianId !== undefined && clinicianId !== null) await requireClinician(tx, clinicianId);
  const settled = {
    ...(clinicianId === undefined ? {} : { clinicianId }),
    ...(wishes === undefined ? {} : { wishes }),
  };
  if (Object.keys(settled).length > 0) await tx.update(TreatmentCase, { id: caseId }, settled);
}

/** What took place at the first visit counts on another path only if both begin with an examination. */
function requireSameBeginning(
  { code, state }: Stage,
  firsts: readonly (CaseChain['stages'][number] | undefined)[],
): void {
  const isExamination = firsts.every((first) => first?.milestones.includes('examination'));
  const isSame = firsts.every((first) => first?.code === code);
  if (state === 'waiting' || isExamination || isSame) return;
  throw new WrongStateError(
    `The first visit ${code}`,
    state,
    'a path that begins with an examination, or a case of its own for this treatment',
  );
}

/** Dates that have to be given anew before a stopped case goes on. */
export const TO_BE_DATED_ANEW: Pick<TreatmentCase, 'consentOn' | 'medicinesAskedOn'> = {
  consentOn: null,
  medicinesAskedOn: null,
};

/** Laboratory work that was stopped in the middle is made again. */
export async function makeStoppedWorkAgain(tx: EntityManager, caseId: string): Promise<void> {
  const loaded = await loadChain(tx, caseId);
  const lost = loaded.rows.steps.filter((step) => step.state === 'discarded' && !isReplaced(step, loaded));
  for (const { code, arches, round, phase, afterStage, beforeStage } of lost) {
    await tx.insert(LabStep, {
      id: uuidv7(),
      caseId,
      code,
      arches,
      round: round + 1,
      phase,
      afterStage,
      beforeStage,
      segments: [],
      state: 'unplanned',
    });
  }
}

function isReplaced({ code, round, arches }: LabStep, { rows }: LoadedChain): boolean {
  return arches.every((arch) =>
    rows.steps.some((each) => each.code === code && each.round > round && each.arches.includes(arch)),
  );
}
