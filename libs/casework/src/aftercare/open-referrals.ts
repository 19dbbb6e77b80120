import { localDate } from '@archwright/calendar';
import { soreSpotStatus } from '@archwright/measures';
import { uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { clinicianOfCase } from '../cases/clinician-of-case.js';
import { notifyColleagues } from '../reminders/colleague-notice.js';
import { noteAftercare } from './note.js';
import { placeWords } from './region-words.js';

/** A spot without a referral that was found long enough ago, with what its counter needs. */
interface OldSpot {
  readonly id: string;
  readonly organisationId: string;
  readonly caseId: string;
  readonly homeClinicId: string;
  readonly zone: string;
  readonly arch: 'upper' | 'lower';
  readonly region: string;
  readonly foundOn: string;
  readonly adjustedAt: readonly Date[];
}

/** Somewhat wider than the counter, which decides: the date is that of each clinic. */
const OLD_SPOTS = `
  SELECT s.id, s.organisation_id AS "organisationId", s.case_id AS "caseId", c.home_clinic_id AS "homeClinicId", l.zone,
    s.arch, s.region, s.found_on::text AS "foundOn",
    ARRAY(SELECT a.done_at FROM adjustment a WHERE a.sore_spot_id = s.id) AS "adjustedAt"
  FROM sore_spot s
  JOIN treatment_case c ON c.id = s.case_id
  JOIN clinic l ON l.id = c.home_clinic_id
  WHERE s.resolved_on IS NULL AND s.found_on <= ($1::timestamptz AT TIME ZONE 'UTC')::date - 12
    AND c.state <> 'ended-by-death' AND NOT EXISTS (SELECT FROM referral_task t WHERE t.sore_spot_id = s.id)
  ORDER BY s.id`;

/**
 * Opens a referral for each sore spot that has outlasted its two weeks. At most one per spot, whoever else sweeps.
 *
 * @returns how many were opened; the clinic and the case's clinician are told
 */
export async function openReferrals(tx: EntityManager, now: Date): Promise<number> {
  const spots: OldSpot[] = await tx.query(OLD_SPOTS, [now]);
  let opened = 0;
  for (const spot of spots) if (await openReferral(tx, spot, now)) opened++;
  return opened;
}

async function openReferral(tx: EntityManager, spot: OldSpot, now: Date): Promise<boolean> {
  const { id: soreSpotId, caseId, zone, arch, region, foundOn, adjustedAt } = spot;
  const adjustedOn = adjustedAt.map((at) => localDate(at.getTime(), zone));
  const counted = { arch, region, foundOn, adjustedOn, healedOn: null };
  const { state, referOn, reason } = soreSpotStatus(counted, localDate(now.getTime(), zone));
  if (state !== 'refer') return false;
  await tx.query('SELECT FROM treatment_case WHERE id = $1 FOR UPDATE', [caseId]);
  const taskId = uuidv7();
  const written: unknown[] = await tx.query(
    `INSERT INTO referral_task (id, case_id, sore_spot_id, reason, due_on, state, created_at)
     SELECT $1, $2, s.id, $4, $5, 'open', $6 FROM sore_spot s WHERE s.id = $3 AND s.resolved_on IS NULL
     ON CONFLICT ON CONSTRAINT referral_task_once_per_spot DO NOTHING RETURNING id`,
    [taskId, caseId, soreSpotId, reason, referOn, now],
  );
  if (written.length === 0) return false;
  const sentence = `A referral is to be decided: sore spot, ${placeWords(arch, region)}, has not healed in two weeks.`;
  const subject = { subjectKind: 'referral-task', subjectId: taskId } as const;
  await noteAftercare(tx, { caseId, kind: 'referral-opened', ...subject, sentence, actorId: null }, now);
  await tell(tx, spot, now);
  return true;
}

/** The clinician decides; the front desk sees that the patient is seen. */
async function tell(tx: EntityManager, { organisationId, caseId, homeClinicId }: OldSpot, now: Date): Promise<void> {
  const about = { kind: 'sore-spot-referral', caseId, alertId: null };
  await notifyColleagues(tx, organisationId, about, { recipient: 'clinic', clinicId: homeClinicId }, now);
  const clinician = await clinicianOfCase(tx, caseId);
  if (clinician === null) return;
  await notifyColleagues(tx, organisationId, about, { recipient: 'clinician', userId: clinician.id }, now);
}
