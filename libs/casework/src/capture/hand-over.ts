import { CustodyObject, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { kindOfObject } from './custody-kind.js';
import type { StageRecord } from './stage-record.js';
import { clinicOfStage } from './stage-visit.js';

/**
 * Gives what was made at a stage a code, once per arch and go, so that it can be packed, received and missed.
 *
 * @returns the codes
 */
export async function keepObjects(tx: EntityManager, record: StageRecord, now: Date): Promise<string[]> {
  const { chain, stage, treatmentCase } = record;
  const clinicId = await clinicOfStage(tx, record);
  const made = chain.objects
    .filter(({ madeAt }) => madeAt === stage.code)
    .flatMap((object): { object: typeof object; arch: 'upper' | 'lower' | null }[] => {
      const arches = object.arches.filter((arch) => stage.arches.includes(arch));
      return object.shared ? [{ object, arch: null }] : arches.map((arch) => ({ object, arch }));
    });
  const codes: string[] = [];
  for (const { object, arch } of made) {
    const parts = [treatmentCase.number, object.code, arch ?? 'both', String(stage.round)];
    const code = parts.join('-');
    codes.push(code);
    if (await tx.existsBy(CustodyObject, { code })) continue;
    await tx.insert(CustodyObject, {
      id: uuidv7(),
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
  }
  return codes;
}
