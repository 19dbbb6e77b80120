import { combineArches, shippedPaths, startProgress, type CaseProgress } from '@archwright/protocol';
import { remakeOf } from './remake.js';

const path = (code: string) => {
  const found = shippedPaths.find((each) => each.code === code);
  if (found === undefined) throw new Error(`No path ${code}`);
  return found;
};
const conventional = path('conventional');
const chain = combineArches({ upper: conventional, lower: conventional });

/** Every stage before `code` passed, `code` under way, the laboratory work before it done. */
function under(code: string, of = chain): CaseProgress {
  const at = of.stages.findIndex((stage) => stage.code === code);
  const before = new Set(of.stages.slice(0, at).map((stage) => stage.code));
  const start = startProgress(of);
  return {
    stages: start.stages.map((row) => ({
      ...row,
      state: before.has(row.code) ? 'passed' : row.code === code ? 'in-progress' : 'planned',
    })),
    steps: start.steps.map((row) => {
      const step = of.steps.find((each) => each.code === row.code);
      return { ...row, state: before.has(step?.afterStage ?? '') ? 'finished' : 'planned' };
    }),
  };
}
const both = ['upper', 'lower'] as const;

describe('remakeOf', () => {
  it('makes the jaw relation again when it could not be recorded, with nothing made before it', () => {
    const remake = remakeOf(chain, under('V3'), { trigger: 'jaw-relation-not-recorded', at: 'V3', arches: both });
    expect(remake).toMatchObject({ returnTo: 'V3', arches: both, heals: false, mayPlan: true });
    expect(remake.discards.map(({ object }) => object)).toEqual(['jaw-relation-record']);
    expect(remake.progress.stages.filter(({ code }) => code === 'V3')).toMatchObject([
      { round: 1, state: 'repeated' },
      { round: 2, state: 'waiting' },
    ]);
    expect(remake.progress.steps.some(({ state }) => state === 'discarded')).toBe(false);
  });

  it('follows the loop for used-up tries when a person gives up on the vertical dimension', () => {
    const remake = remakeOf(chain, under('V3'), { trigger: 'vertical-dimension-out-of-rule', at: 'V3', arches: both });
    expect(remake).toMatchObject({ trigger: 'jaw-relation-not-recorded', returnTo: 'V3' });
  });

  it('goes back to the jaw relation from a wrong trial and discards mounting and set-up', () => {
    const remake = remakeOf(chain, under('V4'), { trigger: 'jaw-relation-wrong-at-trial', at: 'V4', arches: both });
    expect(remake.returnTo).toBe('V3');
    expect(remake.progress.steps.filter(({ state }) => state === 'discarded').map(({ code }) => code)).toEqual([
      'mount',
      'set-up',
      'contour',
    ]);
    expect(remake.progress.stages.filter(({ state }) => state === 'waiting').map(({ code }) => code)).toEqual([
      'V3',
      'V4',
    ]);
  });

  it('repeats the visit for a finding that the path does not name', () => {
    const remake = remakeOf(chain, under('V2'), { trigger: 'clinical-finding', at: 'V2', arches: ['upper'] });
    expect(remake).toMatchObject({ trigger: 'clinical-finding', returnTo: 'V2', arches: ['upper'] });
    expect(remake.discards).toEqual([{ object: 'final-impression', title: 'Final impression', arches: ['upper'] }]);
    expect(remake.progress.stages.filter(({ code }) => code === 'V2')).toMatchObject([
      { round: 1, voided: ['upper'] },
      { round: 2, arches: ['upper'], state: 'waiting' },
    ]);
  });

  it('lets the mucosa heal before the impression is made again', () => {
    const remake = remakeOf(chain, under('V2'), { trigger: 'mucosa-not-healthy', at: 'V2', arches: both });
    expect(remake).toMatchObject({ heals: true, returnTo: 'V2' });
    expect(remake.progress.stages.filter(({ code, state }) => code === 'V2' && state === 'waiting')).toHaveLength(1);
  });

  it('finds the loop of each arch when their paths differ', () => {
    const mixed = combineArches({ upper: conventional, lower: path('digital-printed-bases') });
    const shared = mixed.stages.find((stage) => stage.milestones.includes('trial'))?.code ?? '';
    const remake = remakeOf(mixed, under(shared, mixed), {
      trigger: 'jaw-relation-wrong-at-trial',
      at: shared,
      arches: both,
    });
    expect(remake.trigger).toBe('jaw-relation-wrong-at-trial');
    expect(remake.arches).toEqual(both);
  });
});
