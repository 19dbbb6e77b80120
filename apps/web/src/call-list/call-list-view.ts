import type { CallList, CallTaskView, RecordCall } from '@archwright/contracts';
import { dateAndTime, zoneNote } from '../time/wording.js';
import { deskWords } from '../words/desk.js';
import { spelled } from '../words/plural.js';
import { toldWords } from '../words/told.js';

export interface CallRow {
  id: string;
  version: number;
  patientName: string;
  phone: string | null;
  caseId: string | null;
  reason: string;
  due: string;
  attempts: string[];
  open: boolean;
}

const isOutcome = (text: string): text is RecordCall['outcome'] => text in deskWords.outcomeThen;

/** Open calls first, the one due earliest on top; every attempt in words. */
export function shapeCalls(list: CallList, clock: { viewer: string; today: string }): CallRow[] {
  const when = (at: string, zone: string): string =>
    [dateAndTime(at, zone, clock.today), zoneNote(at, zone, clock.viewer)].filter(Boolean).join(' ');
  const shape = (task: CallTaskView): CallRow => ({
    id: task.id,
    version: task.version,
    patientName: task.patientName,
    phone: task.phone,
    caseId: task.caseId,
    reason: toldWords(task.told),
    due: when(task.dueAt, task.zone),
    attempts: task.attempts.map(({ at, outcome, by }) =>
      deskWords.attempt(
        when(at, task.zone),
        isOutcome(outcome) ? deskWords.outcomeThen[outcome] : spelled(outcome),
        by,
      ),
    ),
    open: task.state === 'open',
  });
  return [...list.items]
    .sort((a, b) => Number(a.state === 'done') - Number(b.state === 'done') || a.dueAt.localeCompare(b.dueAt))
    .map(shape);
}
