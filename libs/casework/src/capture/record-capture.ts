import type { Reading as GivenReading, RecordCapture } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { checkReading, subjectOf, type Reading } from '@archwright/measures';
import { requireVersion, RequestInvalidError, type FieldProblem } from '@archwright/platform';
import {
  Capture,
  ChecklistMark,
  Measurement,
  Tracing,
  appendCaseEvent,
  enqueueOutbox,
  recordAudit,
  uuidv7,
} from '@archwright/records';
import { TracingError } from '@archwright/tracing';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { WrongStateError } from '../errors.js';
import { deviceProblems } from './devices.js';
import { personOf } from './person.js';
import { settleTracing, type SettledTracing } from './settle-tracing.js';
import { changeStage, loadStage, type StageRecord } from './stage-record.js';
import { visitOfStage } from './stage-visit.js';

/** A visit whose place in the path is settled; a finding may also come after it has passed. */
const OPEN_FOR_CAPTURE: readonly string[] = ['planned', 'ready', 'in-progress', 'passed'];

/**
 * Keeps what was recorded at a stage; the check follows in the background.
 *
 * @returns the capture's id
 * @throws {RequestInvalidError} naming each reading, tracing or checklist line that would not be accepted
 */
export async function recordCapture(
  tx: EntityManager,
  actor: Actor,
  stageId: string,
  { version, ...given }: RecordCapture & { version: number },
  now: Date,
): Promise<string> {
  const recordedBy = personOf(actor, 'A capture is recorded by a person.');
  const record = await loadStage(tx, actor, stageId, { lock: true });
  const { stage } = record;
  requireVersion(version, stage.version);
  if (!OPEN_FOR_CAPTURE.includes(stage.state)) {
    throw new WrongStateError(`Stage ${stage.code}`, stage.state, OPEN_FOR_CAPTURE.join(', '));
  }
  const visit = await visitOfStage(tx, stageId);
  const clinicId = visit?.clinicId ?? record.treatmentCase.homeClinicId;
  const { deviceIds = [] } = given;
  const { readings, tracings } = accepted(record, given, await deviceProblems(tx, clinicId, deviceIds));
  const id = uuidv7();
  await tx.insert(Capture, {
    id,
    stageId,
    clinicId,
    chairId: visit?.chairId ?? null,
    deviceIds,
    otherCentricRelation: given.otherCentricRelation,
    recordedAt: now,
    recordedBy,
  });
  await keepReadings(tx, { captureId: id, stageId, recordedBy, at: now }, readings);
  for (const [index, tracing] of tracings.entries()) {
    await tx.insert(Tracing, { id: uuidv7(), captureId: id, stageId, attempt: index + 1, ...tracing, recordedAt: now });
  }
  await markChecklist(tx, { stageId, markedBy: recordedBy, markedAt: now }, given.checklist);
  await supersede(tx, stageId, now);
  await changeStage(tx, stage, {});
  const body = { stage: stage.code, round: stage.round, captureId: id, codes: codesOf(readings) };
  await appendCaseEvent(tx, { caseId: stage.caseId, kind: 'stage-captured', body, actorId: recordedBy, at: now });
  await enqueueOutbox(tx, 'check-stage', { organisationId: actor.organisationId, stageId, captureId: id }, now);
  await recordAudit(tx, {
    actorId: recordedBy,
    action: 'record-capture',
    subjectKind: 'stage',
    subjectId: stageId,
    details: { captureId: id },
    at: now,
  });
  return id;
}

const codesOf = (readings: readonly Reading[]): string[] => [...new Set(readings.map(({ code }) => code))];

/** Every reading as the catalogue keeps it, every tracing evaluated; all that is wrong is named at once. */
function accepted(
  record: StageRecord,
  given: Omit<RecordCapture, 'version'>,
  deviceProblems: readonly FieldProblem[],
): { readings: Reading[]; tracings: SettledTracing[] } {
  const problems: FieldProblem[] = [];
  const readings = given.readings.flatMap((reading, index): Reading[] => {
    try {
      return [requireArch(record, checkReading(reading), reading)];
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      problems.push(problemOf(`readings.${String(index)}`, error));
      return [];
    }
  });
  const tracings = given.tracings.flatMap((tracing, index): SettledTracing[] => {
    try {
      return [settleTracing(tracing)];
    } catch (error) {
      if (!(error instanceof TracingError)) throw error;
      problems.push({ path: `tracings.${String(index)}.points`, problem: error.message });
      return [];
    }
  });
  problems.push(...checklistProblems(record, given.checklist), ...deviceProblems);
  if (problems.length > 0) throw new RequestInvalidError(problems);
  return { readings, tracings };
}

/** An arch that this go at the stage does not treat. */
class ArchNotTreatedError extends DomainError {
  constructor(arch: string, accepted: readonly string[]) {
    super('casework.arch-not-treated', `The ${arch} arch is not treated at this stage.`, {
      accepted,
      qualifier: 'arch',
    });
  }
}

function requireArch({ stage }: StageRecord, checked: Reading, given: GivenReading): Reading {
  if (given.arch !== undefined && !stage.arches.includes(given.arch)) {
    throw new ArchNotTreatedError(given.arch, stage.arches);
  }
  return checked;
}

/** Where in the body a reading is refused: at its code, unit, arch, side, region or method, else at its value. */
function problemOf(path: string, error: DomainError): FieldProblem {
  const { qualifier, accepted } = error.details;
  const field = fieldOf(error.code, typeof qualifier === 'string' ? qualifier : null);
  const choices = Array.isArray(accepted) ? accepted.join(', ') : accepted;
  return {
    path: `${path}.${field}`,
    problem: error.message,
    ...(typeof choices === 'string' && choices !== '' ? { accepted: choices } : {}),
  };
}

function fieldOf(code: string, qualifier: string | null): string {
  if (qualifier !== null)
    return ['arch', 'side', 'region', 'method'].includes(qualifier) ? qualifier : `method.${qualifier}`;
  if (code === 'measures.unknown-code' || code === 'measures.derived-not-typed') return 'code';
  return code === 'measures.wrong-unit' ? 'unit' : 'value';
}

function checklistProblems({ part }: StageRecord, checklist: RecordCapture['checklist']): FieldProblem[] {
  return Object.entries(checklist).flatMap(([code, mark]): FieldProblem[] => {
    const path = `checklist.${code}`;
    const line = part.checklist.find((each) => each.code === code);
    if (line === undefined) {
      const accepted = part.checklist.map((each) => each.code).join(', ');
      return [{ path, problem: `The checklist of this stage has no line "${code}".`, accepted }];
    }
    if (line.counted === (typeof mark === 'number')) return [];
    return [
      {
        path,
        problem: `"${line.text}" is ${line.counted ? 'counted' : 'done or not'}.`,
        accepted: line.counted ? 'a whole number' : 'true or false',
      },
    ];
  });
}

interface Keeping {
  readonly captureId: string;
  readonly stageId: string;
  readonly recordedBy: string;
  readonly at: Date;
}

/** Repeated readings of one subject are numbered in the order in which they were given. */
async function keepReadings(
  tx: EntityManager,
  { captureId, stageId, recordedBy, at }: Keeping,
  readings: readonly Reading[],
): Promise<void> {
  const taken = new Map<string, number>();
  for (const reading of readings) {
    const { code, value, unit = null, arch = null, side = null, region = null, method = null } = reading;
    const number = (taken.get(subjectOf(reading)) ?? 0) + 1;
    taken.set(subjectOf(reading), number);
    await tx.insert(Measurement, {
      id: uuidv7(),
      captureId,
      stageId,
      code,
      reading: number,
      valueNumber: typeof value === 'number' ? value : null,
      valueText: typeof value === 'string' ? value : null,
      valueBoolean: typeof value === 'boolean' ? value : null,
      unit,
      arch,
      side,
      region,
      method: method === null ? null : { ...method },
      recordedAt: at,
      recordedBy,
    });
  }
}

async function markChecklist(
  tx: EntityManager,
  { stageId, markedBy, markedAt }: Pick<ChecklistMark, 'stageId' | 'markedBy' | 'markedAt'>,
  checklist: RecordCapture['checklist'],
): Promise<void> {
  for (const [code, mark] of Object.entries(checklist)) {
    const done = mark !== false;
    const count = typeof mark === 'number' ? mark : null;
    const known = await tx.findOneBy(ChecklistMark, { stageId, code });
    if (known === null)
      await tx.insert(ChecklistMark, { id: uuidv7(), stageId, code, done, count, markedBy, markedAt });
    else await tx.update(ChecklistMark, { id: known.id }, { done, count, markedBy, markedAt });
  }
}

/** A capture is superseded once later ones have taken the place of all its readings and it holds nothing else. */
async function supersede(tx: EntityManager, stageId: string, now: Date): Promise<void> {
  await tx.query(
    `UPDATE capture c SET superseded_at = $2
     WHERE c.stage_id = $1 AND c.superseded_at IS NULL AND c.other_centric_relation = '[]'
       AND NOT EXISTS (SELECT FROM tracing t WHERE t.capture_id = c.id)
       AND EXISTS (SELECT FROM measurement m WHERE m.capture_id = c.id)
       AND NOT EXISTS (
         SELECT FROM measurement m WHERE m.capture_id = c.id AND NOT EXISTS (
           SELECT FROM measurement n JOIN capture later ON later.id = n.capture_id
           WHERE n.stage_id = $1 AND (later.recorded_at, later.id) > (c.recorded_at, c.id) AND n.code = m.code
             AND (n.arch, n.side, n.region) IS NOT DISTINCT FROM (m.arch, m.side, m.region)))`,
    [stageId, now],
  );
}
