import { objectiveFor } from './objective.js';
import type { PreparedChain } from './prepare.js';

const AXES = ['moved', 'day', 'wishes', 'clinicians', 'clinics'] as const;

/** As many visits over so many weeks of five-minute slots, each start of which costs up to 5. */
function prepared(visits: number, weeks: number): PreparedChain {
  const slotCount = weeks * 2016;
  const dayOfSlot = Int32Array.from({ length: slotCount }, (_, slot) => Math.floor(slot / 288));
  const placement = { bufferSteps: [48, 288, 576], mostCost: 5 };
  const list = Array.from({ length: visits }, () => ({}));
  const states = list.map(() => [{ placementCost: new Uint8Array(0) }]);
  return { problem: { slotCount, dayOfSlot, visits: list, placement }, states } as unknown as PreparedChain;
}

describe('the order of plans as one number', () => {
  it('is exact for what a path asks for, placement cost before the sum of starts', () => {
    const { weights } = objectiveFor(prepared(8, 32), AXES);
    expect(weights.placement).toBe(8 * 32 * 2016 + 1);
    expect(weights.buffer).toBe(weights.placement * (8 * 5 + 1));
  });

  it('leaves placement cost out where it has no room for it, and is refused where nothing helps', () => {
    const { weights } = objectiveFor(prepared(14, 32), AXES);
    expect(weights.placement).toBe(0);
    expect(weights.buffer).toBe(14 * 32 * 2016 + 1);
    expect(() => objectiveFor(prepared(40, 52), AXES)).toThrow('53 bits');
  });
});
