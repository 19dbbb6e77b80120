import { ArrivalCheck, TreatmentCase, appendCaseEvent, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { askToCall } from '../reminders/ask-to-call.js';
import { notifyColleagues } from '../reminders/colleague-notice.js';
import { inEnglish, told } from '../tell.js';
import { outlookOf } from './outlook.js';
import { loadWorkForVisit, type LoadedWork } from './work-for-visit.js';

/** So long before a visit its work is looked for: a patient can still be called, also over a weekend. Project default. */
const AHEAD_MS = 3 * 86_400_000;
/** Work that is on its way is looked at again after this long, so that a step that falls behind is seen. Project default. */
const AGAIN_MS = 30 * 60_000;
const AT_ONCE = 50;

/**
 * Looks for the laboratory's work of the visits to come. What is not there and can't be counted on asks the clinic for a
 * decision, once per visit as it is timed; what arrives meanwhile takes the question back.
 *
 * @returns how many questions were asked now
 */
export async function lookForArrivals(tx: EntityManager, now: Date): Promise<number> {
  await withdrawOvertaken(tx, now);
  await beginChecks(tx, now);
  const due: { id: string; caseId: string }[] = await tx.query(
    `SELECT id, case_id AS "caseId" FROM arrival_check WHERE state IN ('on-its-way', 'open') AND look_at <= $1
     ORDER BY case_id, id LIMIT ${String(AT_ONCE)}`,
    [now],
  );
  let asked = 0;
  for (const { id, caseId } of due) asked += (await look(tx, { id, caseId }, now)) ? 1 : 0;
  return asked;
}

/** Visits that moved, were cancelled or have begun need no answer any more. */
async function withdrawOvertaken(tx: EntityManager, now: Date): Promise<void> {
  await tx.query(
    `WITH overtaken AS (
       UPDATE arrival_check k SET state = 'withdrawn', version = k.version + 1 FROM appointment a
       WHERE a.id = k.appointment_id AND k.state IN ('on-its-way', 'open')
         AND (a.state NOT IN ('booked', 'provisional') OR a.sequence <> k.appointment_sequence OR a.starts_at <= $1)
       RETURNING k.call_task_id)
     UPDATE call_task t SET state = 'done', version = t.version + 1 FROM overtaken o
     WHERE t.id = o.call_task_id AND t.state = 'open'`,
    [now],
  );
}

async function beginChecks(tx: EntityManager, now: Date): Promise<void> {
  const coming: { caseId: string; stageId: string; appointmentId: string; appointmentSequence: number }[] =
    await tx.query(
      `SELECT g.case_id AS "caseId", g.id AS "stageId", a.id AS "appointmentId", a.sequence AS "appointmentSequence"
       FROM appointment a JOIN appointment_stage x ON x.appointment_id = a.id JOIN stage g ON g.id = x.stage_id
       WHERE a.starts_at > $1 AND a.starts_at <= $2 AND a.state IN ('booked', 'provisional')
         AND EXISTS (SELECT FROM lab_step s WHERE s.case_id = g.case_id AND s.before_stage = g.code AND s.state <> 'discarded')
         AND NOT EXISTS (SELECT FROM arrival_check k WHERE k.stage_id = g.id AND k.appointment_id = a.id
           AND k.appointment_sequence = a.sequence)`,
      [now, new Date(now.getTime() + AHEAD_MS)],
    );
  const rows = coming.map((each) => ({
    ...each,
    id: uuidv7(),
    state: 'on-its-way' as const,
    lookAt: now,
    createdAt: now,
  }));
  // Two sweeps at once may find the same visit.
  if (rows.length > 0) await tx.createQueryBuilder().insert().into(ArrivalCheck).values(rows).orIgnore().execute();
}

async function look(
  tx: EntityManager,
  { id, caseId }: { readonly id: string; readonly caseId: string },
  now: Date,
): Promise<boolean> {
  await tx.query('SELECT FROM treatment_case WHERE id = $1 FOR UPDATE', [caseId]);
  const check = await tx.findOneOrFail(ArrivalCheck, { where: { id }, lock: { mode: 'pessimistic_write' } });
  if (check.state !== 'on-its-way' && check.state !== 'open') return false;
  const work = await loadWorkForVisit(tx, check, now);
  const outlook = outlookOf(work, now);
  const again = new Date(now.getTime() + AGAIN_MS);
  const save = (change: Partial<ArrivalCheck>) =>
    tx.update(ArrivalCheck, { id }, { missing: [...work.missing], ...change, version: check.version + 1 });
  switch (outlook.state) {
    case 'arrived':
      await closeCall(tx, check);
      await save({ state: 'arrived' });
      return false;
    case 'on-its-way':
      await tx.update(ArrivalCheck, { id }, { lookAt: outlook.by < again ? outlook.by : again });
      return false;
    case 'late':
      if (check.state === 'open') {
        await tx.update(ArrivalCheck, { id }, { lookAt: again });
        return false;
      }
      await save({
        state: 'open',
        reason: outlook.reason,
        raisedAt: now,
        lookAt: again,
        callTaskId: await ask(tx, check, { ...work, reason: outlook.reason }, now),
      });
      return true;
  }
}

/** The front desk finds it on its call list and in its mail. */
async function ask(
  tx: EntityManager,
  { caseId, appointmentId, organisationId }: ArrivalCheck,
  { title, missing, reason }: LoadedWork & { readonly reason: string },
  now: Date,
): Promise<string> {
  const { patientId, homeClinicId } = await tx.findOneByOrFail(TreatmentCase, { id: caseId });
  const what = {
    title: { title },
    missing: { list: missing.map((each) => told('item', { title: { title: each } })) },
    reason,
  };
  const callTaskId = await askToCall(tx, { patientId, caseId, appointmentId }, told('call-not-arrived', what), now);
  const body = { appointmentId, sentence: inEnglish(told('not-arrived', what)) };
  await appendCaseEvent(tx, { caseId, kind: 'work-not-arrived', body, actorId: null, at: now });
  const about = { kind: 'work-not-arrived', caseId, alertId: null };
  await notifyColleagues(tx, organisationId, about, { recipient: 'clinic', clinicId: homeClinicId }, now);
  return callTaskId;
}

/** The call that an arrival check asks for need not be made. */
export async function closeCall(tx: EntityManager, { callTaskId }: ArrivalCheck): Promise<void> {
  if (callTaskId === null) return;
  await tx.query(`UPDATE call_task SET state = 'done', version = version + 1 WHERE id = $1 AND state = 'open'`, [
    callTaskId,
  ]);
}
