import { MEASUREMENT_SETS, type MeasurementSet } from '@archwright/measures';
import { MOST_SETS, screenSet } from '@archwright/screening';
import { StageValue, type Capture } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { keepFinding } from './keep-finding.js';
import { amount, numberMeasurement, subjectInWords } from './subject.js';

/** A pair is the least that can go together. */
const FEWEST_MEMBERS = 2;

/**
 * Holds what a capture measured together beside the same of other patients, and keeps a combination that stands out. A set of
 * which one value stands out by itself says nothing more.
 *
 * @param standing codes of the capture's values that stand out by themselves
 */
export async function screenSets(
  tx: EntityManager,
  capture: Capture,
  standing: ReadonlySet<string>,
  valuesPerAlarm: number,
  now: Date,
): Promise<void> {
  const own = await tx.findBy(StageValue, { captureId: capture.id });
  for (const set of MEASUREMENT_SETS) {
    const members = set.members.flatMap((code) => {
      const fitting = own.filter((each) => each.code === code && each.arch === null && each.side === null);
      // Taken in two ways: which of them goes with the others is not known.
      return fitting.length === 1 ? fitting : [];
    });
    if (members.length < FEWEST_MEMBERS || members.some(({ code }) => standing.has(code))) continue;
    await screenMembers(tx, set, members, capture, valuesPerAlarm, now);
  }
}

async function screenMembers(
  tx: EntityManager,
  set: MeasurementSet,
  members: readonly StageValue[],
  { id: captureId, recordedAt }: Capture,
  valuesPerAlarm: number,
  now: Date,
): Promise<void> {
  const [first] = members;
  if (first === undefined) return;
  const others = await othersOf(tx, members, first.patientId, recordedAt);
  const outcome = screenSet(
    members.map(({ value }) => value),
    others,
    valuesPerAlarm,
  );
  if (outcome.outcome !== 'stands-out') return;
  const least = members[outcome.leastFitting] ?? first;
  await keepFinding(tx, {
    effect: `set/${captureId}/${set.code}`,
    kind: 'value',
    comparedWith: 'organisation',
    groupSize: outcome.size,
    code: least.code,
    captureId,
    stageId: least.stageId,
    clinicId: least.clinicId,
    evidence: {
      values: Object.fromEntries(members.map(({ code, value }) => [code, value])),
      ...outcome,
      valuesPerAlarm,
    },
    sentence: inSentence(set, members, least, outcome),
    foundAt: now,
  });
}

/** Of each other patient who has all of it the last values, the latest patients first. */
async function othersOf(
  tx: EntityManager,
  members: readonly StageValue[],
  patientId: string,
  until: Date,
): Promise<number[][]> {
  const rows: { values: number[] }[] = await tx.query(
    `WITH last AS (
       SELECT DISTINCT ON (patient_id, subject) patient_id, subject, value, recorded_at FROM stage_value
       WHERE subject = ANY ($1::text[]) AND recorded_at <= $2 AND patient_id <> $3
       ORDER BY patient_id, subject, recorded_at DESC, capture_id DESC)
     SELECT array_agg(value ORDER BY array_position($1::text[], subject)) AS values FROM last
     GROUP BY patient_id HAVING count(*) = cardinality($1::text[]) ORDER BY max(recorded_at) DESC, patient_id LIMIT $4`,
    [members.map(({ subject }) => subject), until, patientId, MOST_SETS],
  );
  return rows.map(({ values }) => values);
}

function inSentence(
  { name }: MeasurementSet,
  members: readonly StageValue[],
  least: StageValue,
  { size, expected }: { readonly size: number; readonly expected: number },
): string {
  const inWords = (each: StageValue, value: number) => amount(value, numberMeasurement(each.code).unit);
  const values = members.map((each) => `${subjectInWords(each).toLowerCase()} ${inWords(each, each.value)}`);
  return (
    `${name}: ${values.join(', ')} are ordinary by themselves and rare together, beside ${String(size)} other patients. ` +
    `Least fitting: ${subjectInWords(least).toLowerCase()}; with the others about ${inWords(least, expected)} would be expected.`
  );
}
