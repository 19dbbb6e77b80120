import { aTracing } from '../stage/stage.builder.js';
import { compareAttempts, type DrawnAttempt } from './attempts-view.js';

const arm = { angleDeg: 45, lengthMm: 4, rmsMm: 0 };
/** Apex at (x, 0), arms that rise by one in one. */
const drawn = (x: number, number: number): DrawnAttempt => ({
  number,
  stylusOn: 'lower',
  view: 'as-worn',
  points: [1, 2, 3, 4].flatMap((step) => [
    { phase: 'right' as const, x: x + step, y: step },
    { phase: 'left' as const, x: x - step, y: step },
  ]),
});
const evaluation = {
  apex: { xMm: 0, yMm: 0, uncertaintyMm: 0.1 },
  apexAngleDeg: 100,
  arms: { right: arm, left: arm },
  protrusiveDeviationDeg: null,
};
const kept = aTracing({ isDrawn: true, evaluation });

describe('attempts side by side', () => {
  it('are those that are saved, with the drawing that is kept, then those on the screen', () => {
    const { rows, spread } = compareAttempts({
      stageId: 's',
      saved: [kept, aTracing({ number: 2, apex: 'none' })],
      drawn: [drawn(0.3, 1)],
    });
    expect(rows.map(({ name, form, angle }) => [name, form, angle])).toEqual([
      ['recorded 1', 'single', '100.0 degrees'],
      ['recorded 2', 'no apex', 'findings typed'],
      ['1. attempt, not saved', 'typical', '90.0 degrees'],
    ]);
    expect(rows.map(({ drawing }) => drawing?.slice(0, 34) ?? null)).toEqual([
      '/api/v1/stages/s/tracings/1/drawin',
      null,
      'data:image/svg+xml;charset=utf-8,%',
    ]);
    // By hand: 90 and 100 degrees, apices 0.3 mm apart.
    expect(spread).toBe(
      '2 attempts with an apex: angles from 90.0 to 100.0 degrees; apices scatter by 0.15 mm, the widest pair 0.30 mm apart.',
    );
  });

  it('say where the apex is without a minus before nothing', () => {
    const apex = { xMm: -0.004, yMm: -0.3, uncertaintyMm: 0.1 };
    const saved = [aTracing({ isDrawn: true, evaluation: { ...evaluation, apex } })];
    const { rows } = compareAttempts({ stageId: 's', saved, drawn: [] });
    expect(rows[0]?.apex).toBe('0.00, -0.30 mm');
  });

  it('say nothing of one that is hardly begun, and nothing of agreement below two', () => {
    const { rows, spread } = compareAttempts({ stageId: 's', saved: [kept], drawn: [{ ...drawn(0, 1), points: [] }] });
    expect(rows[1]).toMatchObject({ drawing: null, form: '', angle: '' });
    expect(spread).toBeNull();
  });
});
