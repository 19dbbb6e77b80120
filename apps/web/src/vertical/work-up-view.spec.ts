import type { RecordCapture } from '@archwright/contracts';
import type { Judged } from '../stage/finding-view.js';
import { aStage } from '../stage/stage.builder.js';
import { workUpOf } from './work-up-view.js';

const method = { landmarks: 'subnasale-gnathion' };
const height = (code: string, value: number) => ({ code, value, unit: 'mm', method });
const stable = (['upper', 'lower'] as const).map((arch) => ({ code: 'base-stability', value: 'stable', arch }));
const typed = (...readings: RecordCapture['readings']): Judged => ({
  body: { readings, tracings: [], checklist: {}, otherCentricRelation: [] },
  entries: [],
});
const screw = { pitchMmPerTurn: 0.5, raisesBy: 'clockwise' as const };
const stage = aStage({ tracingKit: { label: 'Set A', screw } });
const tooHigh = [height('vertical-dimension-at-rest', 66), height('occlusal-vertical-dimension', 65.5)];

function workUp(...readings: RecordCapture['readings']) {
  const found = workUpOf(stage, typed(...readings));
  if ('problem' in found) throw new Error(found.problem);
  return found;
}

it('puts every method in one table, those that were not used as well, each with what speaks against it', () => {
  const { rows, correction } = workUp();
  expect(rows.map(({ value }) => value)).toEqual(Array.from({ length: 6 }, () => 'not recorded'));
  expect(rows.every(({ weakness }) => weakness.length > 20)).toBe(true);
  expect(correction).toBeNull();
});

it('advises small turns of the kit’s screw, each followed by measuring again', () => {
  const { correction } = workUp(...tooHigh, ...stable);
  expect(correction?.sentence).toBe('Lower by 1.5 to 3.5 mm: Interocclusal rest distance.');
  expect(correction?.steps).toHaveLength(6);
  expect(correction?.steps[0]).toContain('0.5 turn counter clockwise');
  expect(correction?.repeat.join(' ')).toContain('tracing');
});

it('does not believe speech before the bases are known to be stable', () => {
  const contact = { code: 'sibilant-test', value: 'contact' };
  const unheard = workUp(contact);
  expect(unheard).toMatchObject({ bases: 'not-stated', correction: null });
  expect(unheard.note).toContain('stability of the bases');
  expect(workUp(contact, ...stable).correction?.sentence).toContain('Lower by 1 to 2 mm');
});

it('says what can’t be compared', () => {
  const other = { ...height('occlusal-vertical-dimension', 65), method: { landmarks: 'nose-tip-chin' } };
  const found = workUpOf(stage, typed(height('vertical-dimension-at-rest', 68), other));
  expect(found).toMatchObject({ problem: expect.stringContaining('nose-tip-chin') as unknown });
});
