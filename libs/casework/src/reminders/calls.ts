import type { CallList, CallTaskView, RecordCall, Told } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { CallAttempt, CallTask, appendCaseEvent, recordAudit, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { NotYoursError, RecordNotFoundError, WrongStateError } from '../errors.js';
import { tell, told } from '../tell.js';

/** Answers that end a task; after the others the patient is to be called again. */
const ENDS: readonly RecordCall['outcome'][] = ['reached', 'asks-to-move', 'declined'];
/** A patient who was not reached is called again after this long. Project default, no source. */
const AGAIN_AFTER_MS = 2 * 3_600_000;
/** Done calls stay in sight this long, so that a colleague sees what was said. Project default, no source. */
const DONE_SHOWN_MS = 12 * 3_600_000;

const TASKS = `
  SELECT k.id, k.version, k.patient_id AS "patientId", i.given_name || ' ' || i.family_name AS "patientName", i.phone,
    k.case_id AS "caseId", l.zone, k.reason, k.told, k.state, k.due_at AS "dueAt",
    coalesce((SELECT json_agg(json_build_object('at', to_char(t.attempted_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'),
        'outcome', t.outcome, 'by', u.name) ORDER BY t.attempted_at)
      FROM call_attempt t JOIN user_account u ON u.id = t.attempted_by WHERE t.call_task_id = k.id), '[]') AS attempts
  FROM call_task k
  LEFT JOIN patient_identity i ON i.patient_id = k.patient_id
  LEFT JOIN appointment a ON a.id = k.appointment_id
  LEFT JOIN treatment_case c ON c.id = k.case_id
  JOIN clinic l ON l.id = coalesce(a.clinic_id, c.home_clinic_id)
  WHERE ($1::uuid[] IS NULL OR l.id = ANY ($1))`;

/** Calls to make, the earliest due first, and those made within the last hours. */
export async function callListOf(tx: EntityManager, actor: Actor, now: Date): Promise<CallList> {
  const items = await readTasks(
    tx,
    `${TASKS} AND (k.state = 'open' OR EXISTS (
         SELECT FROM call_attempt t WHERE t.call_task_id = k.id AND t.attempted_at > $2))
       ORDER BY k.state = 'done', k.due_at, k.id`,
    [clinicsOf(actor), new Date(now.getTime() - DONE_SHOWN_MS)],
  );
  const open = items.filter(({ state }) => state === 'open');
  const overdue = open.filter(({ dueAt }) => Date.parse(dueAt) <= now.getTime()).length;
  const inShort = open.length === 0 ? told('calls-none') : told('calls', { calls: open.length, overdue });
  return { ...tell(inShort), items };
}

/** Notes how a call went. A patient who was reached about a reminder has confirmed the visit. */
export async function recordCallAttempt(
  tx: EntityManager,
  actor: Actor,
  taskId: string,
  { version, outcome }: RecordCall & { version: number },
  now: Date,
): Promise<CallTaskView> {
  if (actor.userId === null) throw new NotYoursError('A call is made by a person.');
  await readTask(tx, actor, taskId);
  const task = await tx.findOneOrFail(CallTask, { where: { id: taskId }, lock: { mode: 'pessimistic_write' } });
  requireVersion(version, task.version);
  if (task.state !== 'open') throw new WrongStateError('This call', task.state, 'open');
  const isDone = ENDS.includes(outcome);
  await tx.insert(CallAttempt, {
    id: uuidv7(),
    callTaskId: taskId,
    outcome,
    attemptedAt: now,
    attemptedBy: actor.userId,
  });
  await tx.update(
    CallTask,
    { id: taskId },
    {
      version: task.version + 1,
      ...(isDone ? { state: 'done' as const } : { dueAt: new Date(now.getTime() + AGAIN_AFTER_MS) }),
    },
  );
  if (outcome === 'reached' && task.reminderId !== null) await confirmVisit(tx, task, now);
  await noteCall(tx, actor, task, outcome, now);
  return readTask(tx, actor, taskId);
}

async function confirmVisit(tx: EntityManager, { appointmentId }: CallTask, now: Date): Promise<void> {
  await tx.query(
    `UPDATE appointment SET confirmed_by_patient_at = $2, version = version + 1 WHERE id = $1 AND state = 'booked'`,
    [appointmentId, now],
  );
}

async function noteCall(tx: EntityManager, actor: Actor, task: CallTask, outcome: string, now: Date): Promise<void> {
  const { id, caseId } = task;
  if (caseId !== null) {
    const body = { callTaskId: id, outcome };
    await appendCaseEvent(tx, { caseId, kind: 'call-made', body, actorId: actor.userId, at: now });
  }
  await recordAudit(tx, {
    actorId: actor.userId,
    action: 'record-call',
    subjectKind: 'call-task',
    subjectId: id,
    details: { outcome },
    at: now,
  });
}

async function readTask(tx: EntityManager, actor: Actor, taskId: string): Promise<CallTaskView> {
  const [task] = await readTasks(tx, `${TASKS} AND k.id = $2`, [clinicsOf(actor), taskId]);
  if (task === undefined) throw new RecordNotFoundError('call', taskId);
  return task;
}

type TaskRow = Omit<CallTaskView, 'patientName' | 'dueAt' | 'told'> & {
  patientName: string | null;
  dueAt: Date;
  told: Told | null;
};

async function readTasks(tx: EntityManager, sql: string, parameters: unknown[]): Promise<CallTaskView[]> {
  const rows: TaskRow[] = await tx.query(sql, parameters);
  return rows.map((row) => ({
    ...row,
    patientName: row.patientName ?? '(erased)',
    told: row.told ?? told('as-written', { text: row.reason }),
    dueAt: row.dueAt.toISOString(),
  }));
}

const clinicsOf = ({ role, clinicIds }: Actor): readonly string[] | null =>
  role === 'administrator' ? null : clinicIds;
