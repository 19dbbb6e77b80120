import type { CaseCourse } from '@archwright/contracts';
import { MEASUREMENTS, measurementByCode } from '@archwright/measures';
import { StageValue } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Captured } from '../capture/captured.js';
import { subjectKey, type Subject } from '../screening/subject.js';

type MeasuredOver = CaseCourse['measurements'][number];
type Value = MeasuredOver['values'][number];

/** A value that counts at its stage. */
interface Counting {
  readonly subject: Subject;
  readonly stageId: string;
  readonly value: Value['value'];
  readonly at: Date;
}

/**
 * What was measured at each stage, by what it is about: numbers as the median of their readings or worked out from them,
 * grades and findings as they were recorded. Answers of a questionnaire are told by its score.
 *
 * @param stageIds in the order of the visits
 */
export async function measuredOverVisits(
  tx: EntityManager,
  stageIds: readonly string[],
  captured: ReadonlyMap<string, Captured>,
): Promise<MeasuredOver[]> {
  const counting = [...(await numbersOf(tx, stageIds)), ...namedOf(captured)];
  const bySubject = new Map<string, { subject: Subject; values: Map<string, Value> }>();
  for (const { subject, stageId, value, at } of counting) {
    const key = subjectKey(subject);
    const known = bySubject.get(key) ?? { subject, values: new Map() };
    known.values.set(stageId, { stageId, value, at: at.toISOString() });
    bySubject.set(key, known);
  }
  return [...bySubject.entries()]
    .sort(([one, { subject: a }], [other, { subject: b }]) => place(a) - place(b) || (one < other ? -1 : 1))
    .map(([, { subject, values }]) => {
      const measurement = measurementByCode(subject.code);
      const isNumber = measurement.kind === 'number' || measurement.kind === 'count';
      return {
        code: subject.code,
        name: measurement.name,
        unit: isNumber && measurement.unit !== 'count' ? measurement.unit : null,
        arch: subject.arch,
        side: subject.side,
        region: subject.region,
        method: subject.method ?? {},
        values: stageIds.flatMap((stageId) => values.get(stageId) ?? []),
      };
    });
}

const ORDER = new Map(MEASUREMENTS.map(({ code }, index) => [code, index]));
const place = ({ code }: Subject): number => ORDER.get(code) ?? ORDER.size;

/** Of each stage and subject the last. */
async function numbersOf(tx: EntityManager, stageIds: readonly string[]): Promise<Counting[]> {
  const rows = await tx.find(StageValue, {
    where: { stageId: In([...stageIds]) },
    order: { recordedAt: 'ASC', id: 'ASC' },
  });
  return rows.map(({ stageId, value, recordedAt, code, arch, side, region, method }) => ({
    subject: { code, arch, side, region, method },
    stageId,
    value,
    at: recordedAt,
  }));
}

function namedOf(captured: ReadonlyMap<string, Captured>): Counting[] {
  return [...captured].flatMap(([stageId, { readings }]) =>
    readings.flatMap(({ reading, at }): Counting[] => {
      const { code, value, arch = null, side = null, region = null, method = null } = reading;
      const measurement = measurementByCode(code);
      if (typeof value === 'number' || measurement.isAnswer === true) return [];
      const subject = { code, arch, side, region, method: method === null ? null : { ...method } };
      return [{ subject, stageId, value: typeof value === 'boolean' ? value : { label: labelOf(code, value) }, at }];
    }),
  );
}

function labelOf(code: string, value: string): string {
  const measurement = measurementByCode(code);
  const options = measurement.kind === 'enum' ? measurement.options : [];
  return options.find((option) => option.code === value)?.label ?? value;
}
