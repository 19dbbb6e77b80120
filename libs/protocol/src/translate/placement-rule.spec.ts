import { setRange } from '@archwright/planner';
import { PLACEMENT, PersonDays } from './placement-rule.js';

/** Two days of 40 slots. */
const days = Int32Array.from({ length: 80 }, (_, slot) => 7 + Math.floor(slot / 40));

function bits(...ranges: readonly (readonly [number, number])[]): Uint32Array {
  const set = new Uint32Array(3);
  for (const [from, until] of ranges) setRange(set, from, until - 1);
  return set;
}

describe('the placement rule', () => {
  it('costs by how full the day of the clinician becomes, the visit included', () => {
    // Ten slots are worked on the first day, none of them taken; twenty on the second, of which twelve are.
    const person = new PersonDays(bits([0, 10], [50, 70]), bits([0, 10], [50, 58]), days);
    const levelOf = (lengthSlots: number, slot: number) => person.placementCosts(lengthSlots)[slot];
    expect([4, 5, 7, 10].map((length) => levelOf(length, 0))).toEqual([0, 1, 2, 3]);
    // 13, 14 and 17 of 20 slots are 65, 70 and 85 %.
    expect([1, 2, 5].map((length) => levelOf(length, 50))).toEqual([1, 2, 3]);
  });

  it('costs one for each scrap of free time that is left before and after', () => {
    const person = new PersonDays(bits([0, 40]), bits([4, 14]), days);
    const costs = (lengthSlots: number, from: number, until: number) => [
      ...person.placementCosts(lengthSlots).slice(from, until),
    ];
    // The day is full either way. A scrap is one or two slots: none at the ends of the stretch, none in its middle.
    expect(costs(4, 4, 11)).toEqual([3, 4, 4, 3, 4, 4, 3]);
    expect(costs(8, 4, 7)).toEqual([4, 5, 4]);
    expect(costs(10, 4, 5)).toEqual([3]);
  });

  it('never costs more than the rule says, and nothing on a day without work', () => {
    const crowded = new PersonDays(bits([0, 10], [41, 45]), bits([3, 8], [41, 45]), days);
    for (let length = 1; length <= 5; length++) {
      expect(Math.max(...crowded.placementCosts(length))).toBeLessThanOrEqual(PLACEMENT.mostCost);
    }
    expect(Math.max(...crowded.placementCosts(3))).toBeGreaterThan(3);
    const idle = new PersonDays(bits(), bits(), days);
    expect(Math.max(...idle.placementCosts(4))).toBe(0);
  });
});
