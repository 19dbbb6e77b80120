import type { ScreenCapturePayload } from '@archwright/contracts';
import { screenValue, type ComparedValue, type ValueOutcome } from '@archwright/screening';
import { Capture } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { compareValue, type ValueGroup } from './comparisons.js';
import { valuesPerFalseAlarm } from './false-alarms.js';
import { keepFinding } from './keep-finding.js';
import { keepStageValues } from './keep-stage-values.js';
import { screenSets } from './screen-sets.js';
import { loadStageValues } from './stage-values.js';
import { numberMeasurement, resolutionOf, subjectKey, type Subject } from './subject.js';
import { valueInSentence } from './value-words.js';

/**
 * Holds each number of a checked capture, read or worked out, beside the patient's value before, the clinic and the
 * organisation, what was measured together beside the same of others, and keeps what stands out. Changes nothing at the stage. Safe to run twice: a screened capture is left alone.
 */
export async function screenCapture(
  tx: EntityManager,
  { organisationId, captureId }: ScreenCapturePayload,
  now: Date,
): Promise<void> {
  const capture = await tx.findOne(Capture, { where: { id: captureId }, lock: { mode: 'pessimistic_write' } });
  if (capture?.checkedAt == null || capture.screenedAt !== null) return;
  const subjects = await keepStageValues(tx, capture);
  if (capture.supersededAt === null) {
    const valuesPerAlarm = await valuesPerFalseAlarm(tx, organisationId);
    const standing = new Set<string>();
    for (const subject of subjects)
      if (await screen(tx, capture, subject, valuesPerAlarm, now)) standing.add(subject.code);
    await screenSets(tx, capture, standing, valuesPerAlarm, now);
  }
  await tx.update(Capture, { id: captureId }, { screenedAt: now });
}

/** @returns whether the value stands out by itself */
async function screen(
  tx: EntityManager,
  { id: captureId, stageId, recordedAt }: Capture,
  subject: Subject,
  valuesPerAlarm: number,
  now: Date,
): Promise<boolean> {
  const compared = compareValue(await loadStageValues(tx, subjectKey(subject), recordedAt), captureId);
  if (compared === null) return false;
  const { mine, before, comparisons } = compared;
  const resolution = resolutionOf(numberMeasurement(subject.code));
  const outcomes = screenValue(comparisons, { valuesPerAlarm, resolution });
  // The narrowest group that it stands out in says most.
  const found = outcomes.find(standsOut);
  if (found === undefined) return false;
  await keepFinding(tx, {
    effect: `value/${captureId}/${subjectKey(subject)}`,
    kind: 'value',
    comparedWith: found.group,
    groupSize: found.size,
    code: subject.code,
    captureId,
    stageId,
    clinicId: mine.clinicId,
    evidence: { value: mine.value, before: before?.value ?? null, outcomes, valuesPerAlarm },
    sentence: valueInSentence(subject, { mine, before }, found, outcomes),
    foundAt: now,
  });
  return true;
}

const standsOut = (outcome: ValueOutcome<ValueGroup>): outcome is ComparedValue<ValueGroup> =>
  outcome.outcome === 'stands-out';
