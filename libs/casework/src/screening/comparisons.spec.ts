import { compareValue } from './comparisons.js';
import type { StageValue } from './stage-values.js';

let written = 0;
/** One patient's value at a visit of its own, in the order of writing. */
const visit = (patientId: string, value: number, clinicId = 'north'): StageValue => {
  written += 1;
  const id = String(written);
  return {
    captureId: `capture-${id}`,
    stageId: `stage-${id}`,
    patientId,
    clinicId,
    deviceId: null,
    recordedBy: 'somebody',
    recordedAt: new Date(Date.UTC(2027, 0, written)),
    value,
  };
};
const groupsOf = (values: readonly StageValue[], mine: StageValue) =>
  compareValue([...values, mine], mine.captureId)?.comparisons;

describe('whom a new value is compared with', () => {
  it('counts every other patient once, by the last value', () => {
    const others = [visit('a', 60), visit('a', 61), visit('b', 66), visit('a', 62)];
    expect(groupsOf(others, visit('me', 70))).toEqual([{ group: 'clinic', value: 70, others: [62, 66] }]);
  });

  it('holds the patient’s change beside the last changes of those who have one', () => {
    const others = [visit('a', 60), visit('a', 61), visit('a', 64), visit('b', 66), visit('me', 65), visit('c', 67)];
    expect(groupsOf(others, visit('me', 72))?.[0]).toEqual({ group: 'own-change', value: 7, others: [3] });
  });

  it('adds the organisation where other clinics have patients', () => {
    const others = [visit('a', 60), visit('b', 66, 'south')];
    expect(groupsOf(others, visit('me', 70))).toEqual([
      { group: 'clinic', value: 70, others: [60] },
      { group: 'organisation', value: 70, others: [60, 66] },
    ]);
  });

  it('compares nothing for a capture whose value no longer counts', () => {
    expect(compareValue([visit('a', 60)], 'capture-of-before')).toBeNull();
  });
});
