import { LEARNED, screenSeries, type Drift } from '@archwright/screening';
import type { EntityManager } from 'typeorm';
import { keepFinding } from './keep-finding.js';
import type { StageValue } from './stage-values.js';
import { amount, numberMeasurement, resolutionOf, subjectInWords, subjectKey, type Subject } from './subject.js';

/** What began to drift longer ago is history: nobody is told on the first night of an old practice. Project default. */
const TOLD_WITHIN_MS = 30 * 86_400_000;
/** A clinic's series of fewer people would be a chart of one of them. Project default. */
const FEWEST_PEOPLE = 3;

interface Looking {
  readonly valuesPerAlarm: number;
  readonly now: Date;
}

/** Whose readings follow one another, and who may be told of it. */
interface Series {
  readonly kind: 'own-series' | 'clinic-series';
  readonly ownerId: string;
  readonly values: readonly StageValue[];
}

/** Keeps the recent drifts of each person's and each clinic's readings of one subject. */
export async function findDrifts(
  tx: EntityManager,
  subject: Subject,
  values: readonly StageValue[],
  { valuesPerAlarm, now }: Looking,
): Promise<void> {
  const resolution = resolutionOf(numberMeasurement(subject.code));
  for (const series of seriesOf(values)) {
    const numbers = series.values.map(({ value }) => value);
    const screened = screenSeries(numbers, { valuesPerAlarm, resolution });
    if (screened.outcome === 'too-few') continue;
    for (const drift of screened.drifts) await tell(tx, subject, series, drift, now);
  }
}

function seriesOf(values: readonly StageValue[]): Series[] {
  const people = byOwner(values, ({ recordedBy }) => recordedBy);
  const clinics = byOwner(values, ({ clinicId }) => clinicId);
  const isShared = (own: readonly StageValue[]) =>
    new Set(own.map(({ recordedBy }) => recordedBy)).size >= FEWEST_PEOPLE;
  return [
    ...[...people].map(([ownerId, own]): Series => ({ kind: 'own-series', ownerId, values: own })),
    ...[...clinics]
      .filter(([, own]) => isShared(own))
      .map(([ownerId, own]): Series => ({ kind: 'clinic-series', ownerId, values: own })),
  ];
}

function byOwner(
  values: readonly StageValue[],
  ownerOf: (value: StageValue) => string | null,
): Map<string, StageValue[]> {
  const owned = new Map<string, StageValue[]>();
  for (const value of values) {
    const owner = ownerOf(value);
    if (owner === null) continue;
    const known = owned.get(owner);
    if (known === undefined) owned.set(owner, [value]);
    else known.push(value);
  }
  return owned;
}

async function tell(
  tx: EntityManager,
  subject: Subject,
  { kind, ownerId, values }: Series,
  drift: Drift,
  now: Date,
): Promise<void> {
  const [found, since] = [values[drift.foundAt], values[drift.since]];
  if (found === undefined || since === undefined) throw new Error('A drift lies within its series.');
  if (now.getTime() - found.recordedAt.getTime() > TOLD_WITHIN_MS) return;
  await keepFinding(tx, {
    effect: `drift/${kind}/${ownerId}/${subjectKey(subject)}/${found.captureId}`,
    kind: 'drift',
    comparedWith: kind,
    groupSize: LEARNED,
    code: subject.code,
    ...(kind === 'own-series' ? { forUserId: ownerId } : { clinicId: ownerId }),
    evidence: { ...drift, values: values.length },
    sentence: driftInSentence(subject, kind, drift, since.recordedAt),
    foundAt: now,
  });
}

function driftInSentence(
  subject: Subject,
  kind: Series['kind'],
  { target, spread, level, since, foundAt }: Drift,
  sinceAt: Date,
): string {
  const { unit } = numberMeasurement(subject.code);
  const whose = kind === 'own-series' ? 'your readings' : 'the readings of this clinic';
  const count = foundAt - since + 1;
  return (
    `${subjectInWords(subject)}: since ${sinceAt.toISOString().slice(0, 10)} ${whose} lie about ` +
    `${amount(level, unit)} (${String(count)} values); the ${String(LEARNED)} by which they are judged lie about ` +
    `${amount(target, unit)}, usual spread ${amount(spread, unit)}.`
  );
}
