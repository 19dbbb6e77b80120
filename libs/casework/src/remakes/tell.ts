import type { EntityManager } from 'typeorm';
import type { StageRecord } from '../capture/stage-record.js';
import { clinicOfStage } from '../capture/stage-visit.js';
import { notifyColleagues } from '../reminders/colleague-notice.js';

/** Tells the clinic's front desk and every laboratory that works on the case. */
export async function tellAboutAlert(
  tx: EntityManager,
  record: Pick<StageRecord, 'stage' | 'treatmentCase' | 'rows'>,
  { id, kind }: { readonly id: string; readonly kind: 'remake-alert' | 'remake-proposal' | 'remake-accepted' },
  now: Date,
): Promise<void> {
  const { stage, rows } = record;
  const about = { kind, caseId: stage.caseId, alertId: id };
  const clinicId = await clinicOfStage(tx, record);
  await notifyColleagues(tx, stage.organisationId, about, { recipient: 'clinic', clinicId }, now);
  const laboratories = new Set(rows.steps.flatMap(({ laboratoryId }) => laboratoryId ?? []));
  for (const laboratoryId of laboratories) {
    await notifyColleagues(tx, stage.organisationId, about, { recipient: 'laboratory', laboratoryId }, now);
  }
}
