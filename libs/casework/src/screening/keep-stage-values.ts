import { derivedValues, measurementByCode, medianOf, withEarlier } from '@archwright/measures';
import {
  Device,
  Measurement,
  Stage,
  StageValue,
  Tracing,
  TreatmentCase,
  uuidv7,
  type Capture,
} from '@archwright/records';
import { tracingValues, type Evaluation, type NoApex } from '@archwright/tracing';
import { In, type EntityManager } from 'typeorm';
import { loadCaptured } from '../capture/captured.js';
import { measuredWith } from '../capture/devices.js';
import { loadEarlier } from '../capture/earlier-readings.js';
import type { KeptEntry } from '../capture/settle-tracing.js';
import { subjectKey, type Subject } from './subject.js';

/** One number that may be compared, and what it is about. */
interface SubjectValue {
  readonly subject: Subject;
  readonly value: number;
}

/**
 * Keeps what screening compares of a capture: the median of the readings of each subject, what is worked out from them
 * and from what counted at that moment, and what was computed of its drawn tracings. Safe to run twice.
 *
 * @returns what the capture has a value of
 */
export async function keepStageValues(tx: EntityManager, capture: Capture): Promise<readonly Subject[]> {
  const { id: captureId, stageId, clinicId, recordedBy, recordedAt } = capture;
  const rows = await tx.find(Measurement, { where: { captureId }, order: { id: 'ASC' } });
  const values = [...readValues(rows), ...(await workedOut(tx, capture, rows)), ...(await traced(tx, captureId))];
  if (values.length === 0) return [];
  const { caseId } = await tx.findOneByOrFail(Stage, { id: stageId });
  const { patientId } = await tx.findOneByOrFail(TreatmentCase, { id: caseId });
  const devices = await tx.findBy(Device, { id: In(capture.deviceIds) });
  const deviceOf = (code: string) => devices.find(({ measures }) => measures === measuredWith(code))?.id ?? null;
  await tx
    .createQueryBuilder()
    .insert()
    .into(StageValue)
    .values(
      values.map(({ subject, value }) => ({
        ...{ id: uuidv7(), captureId, stageId, patientId, clinicId, recordedBy, recordedAt, value },
        ...subject,
        subject: subjectKey(subject),
        deviceId: deviceOf(subject.code),
      })),
    )
    .orIgnore()
    .execute();
  return values.map(({ subject }) => subject);
}

function readValues(rows: readonly Measurement[]): SubjectValue[] {
  const bySubject = new Map<string, { subject: Subject; readings: number[] }>();
  for (const { code, arch, side, region, method, valueNumber } of rows) {
    if (valueNumber === null || measurementByCode(code).isAnswer === true) continue;
    const subject = { code, arch, side, region, method };
    const known = bySubject.get(subjectKey(subject));
    if (known === undefined) bySubject.set(subjectKey(subject), { subject, readings: [valueNumber] });
    else known.readings.push(valueNumber);
  }
  return [...bySubject.values()].map(({ subject, readings }) => ({ subject, value: medianOf(readings) }));
}

/** Values that a reading of this capture has a part in. */
async function workedOut(
  tx: EntityManager,
  { stageId, recordedAt }: Capture,
  rows: readonly Measurement[],
): Promise<SubjectValue[]> {
  const own = new Set(rows.map(({ code }) => code));
  const counting = (await loadCaptured(tx, [stageId], recordedAt)).get(stageId)?.readings ?? [];
  const stage = await tx.findOneByOrFail(Stage, { id: stageId });
  const earlier = await loadEarlier(tx, { stage, stages: await tx.findBy(Stage, { caseId: stage.caseId }) });
  const known = withEarlier(
    counting.map(({ reading }) => reading),
    earlier.map(({ reading }) => reading),
  );
  return derivedValues(known)
    .filter(({ from }) => from.some((code) => own.has(code)))
    .map(({ code, value, method }) => ({ subject: wholeMouth(code, method), value }));
}

/** Medians over the drawn tracings of the capture; typed findings are what a person saw, not what was computed. */
async function traced(tx: EntityManager, captureId: string): Promise<SubjectValue[]> {
  const bySubject = new Map<string, { subject: Subject; values: number[] }>();
  for (const row of await tx.find(Tracing, { where: { captureId }, order: { attempt: 'ASC' } })) {
    const evaluation = row.evaluation as Evaluation | NoApex | null;
    if (evaluation?.apex == null) continue;
    const { stylusOn: stylus, posture } = row.entry as KeptEntry;
    for (const { code, value } of tracingValues(evaluation)) {
      const subject = wholeMouth(code, { stylus, posture });
      const known = bySubject.get(subjectKey(subject));
      if (known === undefined) bySubject.set(subjectKey(subject), { subject, values: [value] });
      else known.values.push(value);
    }
  }
  return [...bySubject.values()].map(({ subject, values }) => ({ subject, value: medianOf(values) }));
}

const wholeMouth = (code: string, method: Readonly<Record<string, string>>): Subject => ({
  ...{ code, arch: null, side: null, region: null },
  method: Object.keys(method).length === 0 ? null : { ...method },
});
