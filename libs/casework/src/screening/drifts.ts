import { Device } from '@archwright/records';
import { LEARNED } from '@archwright/screening';
import type { EntityManager } from 'typeorm';
import { keepFinding } from './keep-finding.js';
import { findDrifts, type FoundDrift, type Series } from './series.js';
import type { StageValue } from './stage-values.js';
import { amount, numberMeasurement, resolutionOf, subjectInWords, subjectKey, type Subject } from './subject.js';

/** What began to drift longer ago is history: nobody is told on the first night of an old practice. Project default. */
const TOLD_WITHIN_MS = 30 * 86_400_000;

interface Looking {
  readonly valuesPerAlarm: number;
  readonly now: Date;
}

/** Keeps the recent drifts of each person's, each clinic's and each device's readings of one subject. */
export async function keepDrifts(
  tx: EntityManager,
  subject: Subject,
  values: readonly StageValue[],
  { valuesPerAlarm, now }: Looking,
): Promise<void> {
  const resolution = resolutionOf(numberMeasurement(subject.code));
  for (const found of findDrifts(values, { valuesPerAlarm, resolution })) {
    if (now.getTime() - found.found.recordedAt.getTime() <= TOLD_WITHIN_MS) await tell(tx, subject, found, now);
  }
}

async function tell(tx: EntityManager, subject: Subject, { series, drift, found, since }: FoundDrift, now: Date) {
  const { kind, ownerId, values } = series;
  const device = kind === 'device-series' ? await tx.findOneByOrFail(Device, { id: ownerId }) : null;
  await keepFinding(tx, {
    effect: `drift/${kind}/${ownerId}/${subjectKey(subject)}/${found.captureId}`,
    kind: 'drift',
    comparedWith: kind,
    groupSize: LEARNED,
    code: subject.code,
    ...(kind === 'own-series' ? { forUserId: ownerId } : { clinicId: device?.clinicId ?? ownerId }),
    ...(device === null ? {} : { deviceId: device.id }),
    evidence: { ...drift, values: values.length },
    sentence: inSentence(subject, WHOSE[kind](device?.name ?? ''), { drift, since }),
    foundAt: now,
  });
}

const WHOSE: Readonly<Record<Series['kind'], (device: string) => string>> = {
  'own-series': () => 'your readings',
  'clinic-series': () => 'the readings of this clinic',
  'device-series': (device) => `the readings with "${device}"`,
};

function inSentence(subject: Subject, whose: string, { drift, since }: Pick<FoundDrift, 'drift' | 'since'>): string {
  const { unit } = numberMeasurement(subject.code);
  const count = drift.foundAt - drift.since + 1;
  return (
    `${subjectInWords(subject)}: since ${since.recordedAt.toISOString().slice(0, 10)} ${whose} lie about ` +
    `${amount(drift.level, unit)} (${String(count)} values); the ${String(LEARNED)} by which they are judged lie about ` +
    `${amount(drift.target, unit)}, usual spread ${amount(drift.spread, unit)}.`
  );
}
