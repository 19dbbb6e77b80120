import { CustodyObject, DisinfectionRecord, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { kindOfObject } from './custody-kind.js';
import type { StageRecord } from './stage-record.js';
import { clinicOfStage } from './stage-visit.js';

/** Somebody's word on how the work of a stage was disinfected. */
type Declared = Pick<DisinfectionRecord, 'agent' | 'disinfectedAt' | 'recordedBy'>;

/**
 * Gives what was made at a stage a code, once per arch and go, so that it can be packed, received and missed. What is
 * declared of the stage's work is declared of each object that is still in the clinic.
 *
 * @returns the codes
 */
export async function keepObjects(
  tx: EntityManager,
  record: StageRecord,
  declared: Declared,
  now: Date,
): Promise<string[]> {
  const { stage } = record;
  const clinicId = await clinicOfStage(tx, record);
  const made = objectsMadeAt(record);
  for (const { object, arch, code } of made) {
    const kept = await tx.findOneBy(CustodyObject, { code });
    const objectId = kept?.id ?? uuidv7();
    if (kept === null)
      await tx.insert(CustodyObject, {
        id: objectId,
        caseId: stage.caseId,
        code,
        kind: kindOfObject(object.code),
        arch,
        round: stage.round,
        holder: 'clinic',
        clinicId,
        state: 'in-use',
        createdAt: now,
      });
    if (kept === null || kept.holder === 'clinic')
      await tx.insert(DisinfectionRecord, { id: uuidv7(), stageId: stage.id, objectId, ...declared });
  }
  return made.map(({ code }) => code);
}

interface MadeObject {
  readonly object: StageRecord['chain']['objects'][number];
  /** Null for what both arches share. */
  readonly arch: 'upper' | 'lower' | null;
  readonly code: string;
}

/** What is made at a stage, once per arch and go. */
export function objectsMadeAt({ chain, stage, treatmentCase }: StageRecord): MadeObject[] {
  return chain.objects
    .filter(({ madeAt }) => madeAt === stage.code)
    .flatMap((object) => {
      const arches = object.arches.filter((arch) => stage.arches.includes(arch));
      return (object.shared ? [null] : arches).map((arch) => ({
        object,
        arch,
        code: [treatmentCase.number, object.code, arch ?? 'both', String(stage.round)].join('-'),
      }));
    });
}
