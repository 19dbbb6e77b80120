import { applyLoop, combineArches, shippedPaths, startProgress, type Arch } from '@archwright/protocol';
import { chainOf, progressOf, sharedChains } from './chain.js';

const conventional = shippedPaths.find(({ code }) => code === 'conventional');
const both: Arch[] = ['upper', 'lower'];

describe('a case read back from its rows', () => {
  it('counts a go no longer for the arches that a later go was made for', () => {
    const rows = [
      { code: 'V3', round: 1, arches: both, state: 'passed' as const },
      { code: 'V3', round: 2, arches: ['upper' as const], state: 'waiting' as const },
      { code: 'V4', round: 1, arches: both, state: 'repeated' as const },
    ];
    expect(progressOf(rows, []).stages.map(({ voided }) => voided)).toEqual([['upper'], [], both]);
  });

  it('is what the protocol said when the rows were written', () => {
    if (conventional === undefined) throw new Error('There is no conventional path.');
    const chain = combineArches({ upper: conventional, lower: conventional });
    const begun = startProgress(chain);
    const done = {
      stages: begun.stages.map((row) =>
        ['V1', 'V2', 'V3', 'V4'].includes(row.code) ? { ...row, state: 'passed' as const } : row,
      ),
      steps: begun.steps,
    };
    for (const loop of chain.loops.filter(({ remedy }) => remedy.kind === 'return')) {
      for (const arches of [both, ['upper' as const]]) {
        const [foundAt = ''] = loop.foundAt;
        const { progress } = applyLoop(chain, done, { loop: loop.code, foundAt, arches, triesMade: 0 });
        const written = {
          stages: progress.stages.map((row) => ({ ...row, arches: [...row.arches] })),
          steps: progress.steps.map((row) => ({ ...row, arches: [...row.arches] })),
        };
        const read = progressOf(written.stages, written.steps);
        const sorted = ({ voided }: { voided: readonly Arch[] }) => [...voided].sort();
        expect(read.stages.map(sorted)).toEqual(progress.stages.map(sorted));
        expect(read.steps.map(sorted)).toEqual(progress.steps.map(sorted));
      }
    }
  });

  it('has the rounds of healing that stages of them exist for', () => {
    if (conventional === undefined) throw new Error('There is no conventional path.');
    const arches = both.map((arch) => ({ arch, pathVersionId: 'one' }));
    const healing = [
      { code: 'H1', round: 1, arches: both },
      { code: 'H2', round: 1, arches: ['upper' as const] },
    ];
    const codes = chainOf(arches, new Map([['one', conventional]]), healing).stages.map(({ code, arches: own }) => [
      code,
      own,
    ]);
    const at = codes.findIndex(([code]) => code === 'H1');
    expect(codes.slice(at, at + 2)).toEqual([
      ['H1', both],
      ['H2', ['upper']],
    ]);
    expect(chainOf(arches, new Map([['one', conventional]]), []).stages.map(({ code }) => code)).not.toContain('H1');
  });

  it('shares a chain between cases only when paths and healing are the same', () => {
    if (conventional === undefined) throw new Error('There is no conventional path.');
    const chain = sharedChains(new Map([['one', conventional]]));
    const arches = both.map((arch) => ({ arch, pathVersionId: 'one' }));
    const healing = [{ code: 'H1', round: 1, arches: both }];
    expect(chain(arches, [])).toBe(chain(arches, []));
    expect(chain(arches, healing).stages.map(({ code }) => code)).toContain('H1');
    expect(chain(arches.slice(0, 1), []).stages[0]?.arches).toEqual(['upper']);
  });
});
