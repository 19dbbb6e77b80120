import { ScreeningFinding, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';

export type NewFinding = Pick<
  ScreeningFinding,
  'effect' | 'kind' | 'comparedWith' | 'groupSize' | 'evidence' | 'sentence' | 'foundAt'
> &
  Partial<
    Pick<
      ScreeningFinding,
      'code' | 'captureId' | 'stageId' | 'clinicId' | 'laboratoryId' | 'workCentreId' | 'deviceId' | 'forUserId'
    >
  >;

/** Keeps a finding unless it was found before. */
export async function keepFinding(tx: EntityManager, finding: NewFinding): Promise<void> {
  await tx
    .createQueryBuilder()
    .insert()
    .into(ScreeningFinding)
    .values({ id: uuidv7(), ...finding })
    .orIgnore()
    .execute();
}
