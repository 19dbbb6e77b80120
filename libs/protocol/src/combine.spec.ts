import { combineArches } from './combine.js';
import { abbreviated } from './paths/abbreviated.js';
import { conventional } from './paths/conventional.js';
import { digital } from './paths/digital.js';
import { overdenture } from './paths/overdenture.js';
import { reline } from './paths/reline.js';
import { singleArchMinutes } from './scale.js';
import { withHealing } from './healing.js';

const codes = (chain: { stages: readonly { code: string; chained: boolean }[] }) =>
  chain.stages.filter((stage) => stage.chained).map((stage) => stage.code);

describe('combining two arches', () => {
  it('gives two arches on one path one visit each, with the minutes of both, not twice', () => {
    const chain = combineArches({ upper: conventional, lower: conventional });
    expect(codes(chain)).toEqual(['V1', 'V2', 'V3', 'V4', 'V5', 'R1', 'R2']);
    expect(chain.stages.map((stage) => stage.chairMinutes.typical).slice(0, 5)).toEqual([60, 75, 75, 45, 60]);
    expect(chain.steps).toHaveLength(16);
    expect(chain.steps.every((step) => step.arches.length === 2)).toBe(true);
  });

  it('shrinks chair and hands-on bench work of a single arch to the 5-minute grid, not curing', () => {
    const chain = combineArches({ upper: conventional });
    // 0.7 and 0.55 of the both-arches minutes, rounded up: 42, 52.5, 52.5, 31.5, 42 and 82.5.
    expect(chain.stages.slice(0, 5).map((stage) => stage.chairMinutes.typical)).toEqual([45, 55, 55, 35, 45]);
    const minutes = (code: string) =>
      chain.steps.find((step) => step.code === code)?.segments.map((each) => each.minutes);
    expect(minutes('set-up')).toEqual([85]);
    expect(minutes('cure')).toEqual([540]);
    expect(singleArchMinutes(100, 0.55)).toBe(55);
  });

  it('finishes a lower reline before the jaw relation record and chains its first check only', () => {
    const chain = combineArches({ upper: conventional, lower: reline });
    expect(codes(chain)).toEqual(['V1', 'E1', 'E2', 'R1-lower', 'V2', 'V3', 'V4', 'V5', 'R1-upper', 'R2-upper']);
    expect(chain.stages.filter((stage) => stage.isDelivery).map((stage) => stage.arches)).toEqual([
      ['lower'],
      ['upper'],
    ]);
    expect(chain.steps.map((step) => step.code)).toEqual(expect.arrayContaining(['cure-upper', 'cure-lower']));
  });

  it('keeps surgery and healing of a lower overdenture to the lower arch and merges the rest', () => {
    const chain = combineArches({ upper: conventional, lower: overdenture });
    expect(codes(chain)).toEqual(['V1-O1', 'O2', 'V2', 'V3', 'V4', 'V5', 'R1', 'O4', 'R2']);
    expect(chain.stages.find((stage) => stage.code === 'O2')?.arches).toEqual(['lower']);
    expect(chain.lags.find((lag) => lag.code === 'implants-heal-lower')).toMatchObject({
      from: 'O2',
      to: 'V2',
      arches: ['lower'],
    });
    // Trays, bases, set-up and processing are alike between shared stages, so they are made together.
    expect(chain.steps.map((step) => step.arches.length)).toEqual(new Array<number>(16).fill(2));
    // 90 for the implant plan plus 0.7 of 60, rounded up.
    expect(chain.stages[0]?.chairMinutes.typical).toBe(135);
    expect(chain.stages.find((stage) => stage.code === 'V3')?.chairMinutes.typical).toBe(75);
  });

  it('joins a digital and a conventional arch at the jaw relation', () => {
    const chain = combineArches({ upper: digital, lower: conventional });
    expect(codes(chain)).toEqual(['D1-V1', 'V2', 'D2-V3', 'D3-V4', 'D4-V5', 'R1', 'R2']);
  });

  it('puts healing before the first final impression, for each arch that needs it', () => {
    const chain = combineArches({ upper: withHealing(conventional, 2), lower: conventional });
    expect(codes(chain).slice(0, 5)).toEqual(['V1', 'H1', 'H2', 'V2', 'V3']);
    expect(chain.stages.find((stage) => stage.code === 'H1')?.arches).toEqual(['upper']);
    expect(chain.steps).toHaveLength(16);
  });

  it('refuses a path the arch is not allowed for, and shared stages in two orders', () => {
    expect(() => combineArches({ upper: overdenture })).toThrow(/not made for the upper arch/);
    const reversed = { ...abbreviated, visits: [...abbreviated.visits].reverse() };
    expect(() => combineArches({ upper: abbreviated, lower: { ...reversed, code: 'reversed' } })).toThrow(
      /different orders/,
    );
  });
});
