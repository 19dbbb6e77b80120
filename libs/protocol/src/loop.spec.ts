import { combineArches } from './combine.js';
import { applyLoop } from './loop.js';
import { conventional } from './paths/conventional.js';
import { overdenture } from './paths/overdenture.js';
import { nextPointOfNoReturn, startProgress, type CaseProgress } from './progress.js';

/** Everything up to and including `stage` done for every arch of the stage. */
function doneThrough(chain: ReturnType<typeof combineArches>, stage: string): CaseProgress {
  const last = chain.stages.find((each) => each.code === stage)?.position ?? 0;
  const position = (code: string) => chain.stages.find((each) => each.code === code)?.position ?? 0;
  const start = startProgress(chain);
  const step = (code: string) => chain.steps.find((each) => each.code === code)?.beforeStage ?? '';
  return {
    stages: start.stages.map((row) => (position(row.code) <= last ? { ...row, state: 'passed' } : row)),
    steps: start.steps.map((row) => (position(step(row.code)) <= last ? { ...row, state: 'finished' } : row)),
  };
}

describe('loops', () => {
  const both = combineArches({ upper: conventional, lower: conventional });
  const found = { foundAt: 'V4', arches: ['upper'], triesMade: 0 } as const;

  it('keeps the passed arch passed when only one arch goes back', () => {
    const outcome = applyLoop(both, doneThrough(both, 'V4'), { ...found, loop: 'looks-refused' });
    expect(outcome).toMatchObject({ againStages: ['V4'], againSteps: ['set-up', 'contour'], arches: ['upper'] });
    const rows = outcome.progress.stages.filter((row) => row.code === 'V4');
    expect(rows).toEqual([
      { code: 'V4', round: 1, arches: ['upper', 'lower'], state: 'passed', voided: ['upper'] },
      { code: 'V4', round: 2, arches: ['upper'], state: 'waiting', voided: [] },
    ]);
    expect(outcome.progress.steps.find((row) => row.code === 'mount')?.state).toBe('finished');
  });

  it('voids both arches when the shared jaw relation record is wrong', () => {
    const outcome = applyLoop(both, doneThrough(both, 'V4'), { ...found, loop: 'jaw-relation-wrong-at-trial' });
    expect(outcome.arches).toEqual(['upper', 'lower']);
    expect(outcome.againStages).toEqual(['V3', 'V4']);
    expect(outcome.againSteps).toEqual(['mount', 'set-up', 'contour']);
    expect(outcome.discards.map((each) => each.object)).toEqual(['jaw-relation-record', 'mounting', 'set-up']);
    expect(outcome.progress.stages.filter((row) => row.code === 'V4').map((row) => row.state)).toEqual([
      'repeated',
      'waiting',
    ]);
  });

  it('voids the other arch on another path through the shared record', () => {
    const chain = combineArches({ upper: conventional, lower: overdenture });
    const outcome = applyLoop(chain, doneThrough(chain, 'V4'), { ...found, loop: 'jaw-relation-wrong-at-trial-upper' });
    expect(outcome.arches).toEqual(['upper', 'lower']);
    expect(outcome.againSteps).toEqual(['mount', 'set-up', 'contour']);
  });

  it('counts a third round', () => {
    const once = applyLoop(both, doneThrough(both, 'V4'), { ...found, loop: 'looks-refused' }).progress;
    const passedAgain = {
      stages: once.stages.map((row) =>
        row.code === 'V4' && row.round === 2 ? { ...row, state: 'passed' as const } : row,
      ),
      steps: once.steps.map((row) => (row.round === 2 ? { ...row, state: 'finished' as const } : row)),
    };
    const twice = applyLoop(both, passedAgain, {
      ...found,
      arches: ['upper', 'lower'],
      loop: 'looks-refused',
    }).progress;
    expect(twice.stages.filter((row) => row.code === 'V4').at(-1)).toMatchObject({
      round: 3,
      arches: ['upper', 'lower'],
    });
  });

  it('adds the other arch to a repeat that is still to come', () => {
    const once = applyLoop(both, doneThrough(both, 'V4'), { ...found, loop: 'looks-refused' }).progress;
    const twice = applyLoop(both, once, { ...found, arches: ['lower'], loop: 'looks-refused' }).progress;
    expect(twice.stages.filter((row) => row.code === 'V4')).toEqual([
      { code: 'V4', round: 1, arches: ['upper', 'lower'], state: 'repeated', voided: ['upper', 'lower'] },
      { code: 'V4', round: 2, arches: ['upper', 'lower'], state: 'waiting', voided: [] },
    ]);
  });

  it('repeats in the visit until the tries are used up, then returns', () => {
    const tracing = { loop: 'tracing-unusable-in-visit', foundAt: 'V3', arches: ['upper', 'lower'] } as const;
    const progress = doneThrough(both, 'V2');
    expect(applyLoop(both, progress, { ...tracing, triesMade: 2 })).toMatchObject({
      remedy: 'repeat-in-visit',
      minutesForNextTry: 15,
      progress,
    });
    expect(applyLoop(both, progress, { ...tracing, triesMade: 3 })).toMatchObject({
      loop: 'jaw-relation-not-recorded',
      remedy: 'return',
    });
  });

  it('voids what was made since on what is discarded when the finding comes after its visit', () => {
    const passed = doneThrough(both, 'V3');
    const mounted = {
      ...passed,
      steps: passed.steps.map((row) => (row.code === 'mount' ? { ...row, state: 'started' as const } : row)),
    };
    const loop = {
      loop: 'jaw-relation-not-recorded',
      foundAt: 'V3',
      arches: ['upper', 'lower'],
      triesMade: 9,
    } as const;
    const outcome = applyLoop(both, mounted, loop);
    expect(outcome.againStages).toEqual(['V3']);
    const goes = (code: string) => outcome.progress.steps.filter((row) => row.code === code).map(({ state }) => state);
    expect(goes('mount')).toEqual(['discarded', 'unplanned']);
    expect(goes('set-up')).toEqual(['unplanned']);
  });

  it('goes back inside the laboratory without a new visit', () => {
    const finished = doneThrough(both, 'V4');
    const cured = { ...finished, steps: finished.steps.map((row) => ({ ...row, state: 'finished' as const })) };
    const outcome = applyLoop(both, cured, {
      loop: 'flaw-found-in-laboratory',
      foundAt: 'check',
      arches: ['lower'],
      triesMade: 0,
    });
    expect(outcome.againStages).toEqual([]);
    expect(outcome.againSteps).toEqual(['flask', 'pack', 'cure', 'deflask', 'lab-remount', 'finish', 'check']);
    expect(outcome.progress.steps.filter((row) => row.round === 2).every((row) => row.arches.join() === 'lower')).toBe(
      true,
    );
  });

  it('refuses a loop where it is not found', () => {
    expect(() => applyLoop(both, startProgress(both), { ...found, foundAt: 'V2', loop: 'looks-refused' })).toThrow(
      /found at V4/,
    );
  });

  it('never asks for teeth to be drawn or implants to be placed again', () => {
    const chain = combineArches({ lower: overdenture });
    const outcome = applyLoop(chain, doneThrough(chain, 'V5'), {
      loop: 'poor-retention',
      foundAt: 'V5',
      arches: ['lower'],
      triesMade: 0,
    });
    expect(outcome.againStages).toEqual(['V2', 'V3', 'V4', 'V5']);
  });
});

describe('next point of no return', () => {
  it('is surgery, then flasking, then none', () => {
    const chain = combineArches({ lower: overdenture });
    expect(nextPointOfNoReturn(chain, startProgress(chain))).toMatchObject({ code: 'O2', kind: 'surgery' });
    expect(nextPointOfNoReturn(chain, doneThrough(chain, 'V4'))).toMatchObject({ code: 'flask', kind: 'flasking' });
    expect(nextPointOfNoReturn(chain, doneThrough(chain, 'V5'))).toBeNull();
  });
});
