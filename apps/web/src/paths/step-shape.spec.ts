import { checkPath, shippedPaths, type TreatmentPath } from '@archwright/protocol';
import { followers, phaseAround, withoutPhase, withoutStep, withStepAfter } from './step-shape.js';

const found = shippedPaths.find(({ code }) => code === 'conventional');
if (found === undefined) throw new Error('The conventional path is shipped.');
const path: TreatmentPath = found;
const start = { title: 'New step', workCentre: 'wax' };
const orderIn = (of: TreatmentPath, phase: string): string[] =>
  of.labPhases.find(({ code }) => code === phase)?.steps.map(({ code }) => code) ?? [];
const afterOf = (of: TreatmentPath, code: string): string[] =>
  phaseAround(of, code)
    ?.steps.find((step) => step.code === code)
    ?.after.map((arrow) => arrow.code) ?? [];

describe('a step more', () => {
  it('stands between a step and what followed it, at the same work centre', () => {
    const added = withStepAfter(path, 'mount', start);
    if (added === null) throw new Error('A step fits after a step.');
    expect(orderIn(added.path, 'set-up')).toEqual(['mount', added.code, 'set-up', 'contour']);
    expect(afterOf(added.path, added.code)).toEqual(['mount']);
    expect(afterOf(added.path, 'set-up')).toEqual([added.code]);
    expect(phaseAround(added.path, added.code)?.steps[1]?.workCentre).toBe('articulator');
    expect(checkPath(added.path)).toEqual([]);
  });

  it('begins the work after a visit, and takes over the wait from it', () => {
    const added = withStepAfter(path, 'V3', start);
    if (added === null) throw new Error('A step fits after a visit.');
    expect(orderIn(added.path, 'set-up')[0]).toBe(added.code);
    expect(phaseAround(added.path, 'mount')?.steps[1]?.after).toMatchObject([
      { code: added.code, lag: 'record-to-mounting', max: { amount: 2880 } },
    ]);
    expect(checkPath(added.path)).toEqual([]);
  });

  it('makes work between two visits that had none, and none after the last visit', () => {
    const added = withStepAfter(path, 'V5', start);
    if (added === null) throw new Error('A step fits before another visit.');
    expect(added.path.labPhases.at(-1)).toMatchObject({ after: 'V5', before: 'R1', steps: [{ workCentre: 'wax' }] });
    expect(checkPath(added.path)).toEqual([]);
    expect(withStepAfter(path, path.visits.at(-1)?.code ?? '', start)).toBeNull();
    expect(withStepAfter(path, 'none', start)).toBeNull();
  });
});

describe('a step less', () => {
  it('leaves what followed it behind what stood before it', () => {
    const without = withoutStep(path, 'set-up');
    expect(orderIn(without, 'set-up')).toEqual(['mount', 'contour']);
    expect(afterOf(without, 'contour')).toEqual(['mount']);
    expect(checkPath(without).map(({ fault, at }) => [fault, at.code])).toEqual([['returns-later', 'looks-refused']]);
  });

  it('takes its waits, gates and objects along, and its work with the last step', () => {
    const without = withoutStep(path, 'flask');
    expect(JSON.stringify(without.gates)).not.toContain('"flask"');
    const [trays] = path.labPhases;
    const none = withoutPhase(path, 'trays');
    expect(none.labPhases).toHaveLength(path.labPhases.length - 1);
    expect(none.lags.map(({ from }) => from)).not.toContain('trays');
    const oneByOne = (trays?.steps ?? []).reduce((left, { code }) => withoutStep(left, code), path);
    expect(oneByOne).toEqual(none);
  });

  it('does not name one step twice before another', () => {
    const both = {
      ...path,
      labPhases: path.labPhases.map((phase) => ({
        ...phase,
        steps: phase.steps.map((step) =>
          step.code === 'contour'
            ? { ...step, after: [...step.after, { code: 'mount', lag: null, min: null, max: null }] }
            : step,
        ),
      })),
    };
    expect(afterOf(withoutStep(both, 'set-up'), 'contour')).toEqual(['mount']);
  });
});

it('finds what follows a step, with the place of its arrow', () => {
  const phase = phaseAround(path, 'set-up');
  if (phase === undefined) throw new Error('The path has a set-up.');
  expect(followers(phase, 'set-up').map(({ step, index }) => [step.code, index])).toEqual([['contour', 0]]);
  expect(followers(phase, 'contour')).toEqual([]);
});
