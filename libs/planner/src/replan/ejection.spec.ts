import type { Draft, JointPlanner } from './draft.js';
import { Ejection, MOST_TRIED } from './ejection.js';
import type { HeldTime } from './held-time.js';

const visits = [{ startSlot: 0, endSlot: 1, chair: 'chair', clinician: 'person', assistant: null, kits: [] }];
const change = { plan: { visits, operations: [] }, reach: 'visits-moved' };

describe('asking others to make room', () => {
  it('ends after a fixed number of plans, however many others there are', () => {
    const neighbours = Array.from({ length: 10 * MOST_TRIED }, (_, index) => ({ key: `other ${String(index)}` }));
    let tried = 0;
    const planner = {
      question: { broken: [{ key: 'broken' }], neighbours, held: new Map() },
      // There would be room if all of them made some, and never if one does.
      change: (_key: string, { held }: Draft) => {
        tried++;
        return held.size === 0 ? change : null;
      },
    } as unknown as JointPlanner;
    const held = new Map<string, HeldTime>(neighbours.map(({ key }) => [key, new Map()]));
    expect(new Ejection(planner).makeRoom('broken', { changes: new Map(), held })).toBeNull();
    expect(tried).toBe(MOST_TRIED);
  });
});
