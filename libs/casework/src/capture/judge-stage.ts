import { evaluateStage, milestoneKindsOf, type Person, type Verdict } from '@archwright/measures';
import { PARTS_IN } from '@archwright/protocol';
import { ChecklistMark, PatientIdentity } from '@archwright/records';
import { MoreThan, type EntityManager } from 'typeorm';
import { overlayInForce } from '../ranges/overlay-in-force.js';
import type { Captured } from './captured.js';
import { loadEarlier } from './earlier-readings.js';
import type { StageRecord } from './stage-record.js';

/** What of a person chooses between published ranges; nothing where it is not stated. */
export const personalFacts = (identity: Pick<PatientIdentity, 'sex'> | null): Person =>
  identity === null || identity.sex === null ? {} : { sex: identity.sex };

/** What the checks say of everything that counts at a stage, by the practice's ranges in force. Keeps nothing. */
export async function judgeStage(
  tx: EntityManager,
  record: StageRecord,
  captured: Captured | undefined,
): Promise<readonly Verdict[]> {
  if (captured === undefined) return [];
  const { part, stage } = record;
  const earlier = await loadEarlier(tx, { stage, stages: record.rows.stages });
  return evaluateStage({
    readings: captured.readings.map(({ reading }) => reading),
    facts: {
      milestones: part.milestones.flatMap((milestone) => milestoneKindsOf(milestone)),
      arches: stage.arches,
      person: personalFacts(await tx.findOneBy(PatientIdentity, { patientId: record.treatmentCase.patientId })),
      earlier: earlier.map(({ reading }) => reading),
      tracings: captured.tracings.map(({ entry }) => entry),
      tracingPlanned: await tx.existsBy(ChecklistMark, { stageId: stage.id, code: PARTS_IN, count: MoreThan(0) }),
      otherCentricRelation: captured.otherCentricRelation,
    },
    overlay: await overlayInForce(tx),
  });
}
