import { DomainError } from '@archwright/kernel';
import type { ArcTables, ChainProblem, ChainVisit, LabAlternative, SlotBits } from './model.js';
import { planOffers } from './offers.js';

const SLOTS = 60;
/** Open for eight of every ten slots. */
const isOpen = (slot: number): boolean => slot % 10 < 8;

function bits(holds: (slot: number) => boolean): SlotBits {
  const out = new Uint32Array(Math.ceil(SLOTS / 32));
  for (let slot = 0; slot < SLOTS; slot++) if (holds(slot)) out[slot >> 5]! |= 1 << (slot & 31);
  return out;
}

const table = (slots: number, end: number): Int32Array =>
  Int32Array.from({ length: SLOTS + 1 }, (_, anchor) => Math.min(anchor + slots, end));
const atLeast = (slots: number): ArcTables => ({ lo: table(slots, SLOTS), hi: null });
const atMost = (slots: number): ArcTables => ({ lo: null, hi: table(slots, SLOTS - 1) });

function aVisit(key: string, follows: number | null, lengthSlots = 2): ChainVisit {
  const free = bits(isOpen);
  return {
    key,
    follows,
    wished: null,
    options: [
      {
        clinic: 'north',
        refused: false,
        lengthSlots,
        open: free,
        clinicians: [{ key: 'ada', free, placementCost: null, refused: false }],
        chairs: [{ key: 'chair', free }],
        assistants: null,
        kits: [],
        allowed: bits(() => true),
        allowedIfLifted: null,
      },
    ],
  };
}

/** Three visits, nothing booked. */
function aProblem(change: Partial<ChainProblem> = {}): ChainProblem {
  return {
    slotCount: SLOTS,
    dayOfSlot: Int32Array.from({ length: SLOTS }, (_, slot) => Math.floor(slot / 10)),
    halfDayOfSlot: Int32Array.from({ length: SLOTS }, (_, slot) => Math.floor(slot / 5)),
    visits: [aVisit('first', null), aVisit('second', 0), aVisit('third', 1)],
    deliveryVisit: 2,
    lags: [],
    phases: [],
    mixing: 'any-clinic',
    seenBy: null,
    placement: { bufferSteps: [], mostCost: 0 },
    ...change,
  };
}

/** Work of six slots on one place between the first visit and the second. */
function aLab(lab: string, free: SlotBits, arcs: LabAlternative['arcs'] = []): LabAlternative {
  return {
    lab,
    operations: [
      {
        key: 'set-up',
        centre: 'wax',
        centreOpen: bits(isOpen),
        segments: [{ slots: 6, mode: 'pauses', holdsPlace: true }],
        places: [{ key: `${lab}-1`, free }],
        batches: [],
        allowed: null,
      },
    ],
    arcs,
  };
}

const work = (...labs: LabAlternative[]): ChainProblem['phases'] => [{ key: 'trial', after: 0, before: 1, labs }];

function refusalOf(problem: ChainProblem): DomainError {
  try {
    planOffers(problem, 1);
  } catch (error) {
    if (error instanceof DomainError) return error;
    throw error;
  }
  throw new Error('The problem was not refused.');
}

describe('a problem that can never have a plan is refused', () => {
  it('names a visit that is longer than any opening, and how long it could be', () => {
    const visits = [aVisit('first', null), aVisit('second', 0, 9), aVisit('third', 1)];
    const refusal = refusalOf(aProblem({ visits }));
    expect([refusal.code, refusal.details]).toEqual([
      'planner.visit-too-long',
      { visit: 'second', lengthSlots: 9, longestOpeningSlots: 8 },
    ]);
    expect(refusal.message).toContain('Shorten the visit to that');
  });

  it('names a visit that nobody has the skill for', () => {
    const second = aVisit('second', 0);
    const options = second.options.map((option) => ({ ...option, clinicians: [] }));
    const refusal = refusalOf(
      aProblem({ visits: [aVisit('first', null), { ...second, options }, aVisit('third', 1)] }),
    );
    expect([refusal.code, refusal.details]).toEqual(['planner.no-clinician', { visit: 'second', clinics: ['north'] }]);
    expect(refusal.message).toContain('Accept a clinician or a clinic that has the skill');
  });

  it('names the operation and the bench of each laboratory without capacity, and is silent when one has some', () => {
    const none = bits(() => false);
    const refusal = refusalOf(aProblem({ phases: work(aLab('own', none), aLab('other', none)) }));
    expect(refusal.code).toBe('planner.lab-without-capacity');
    expect(refusal.details['blocked']).toEqual(
      ['own', 'other'].map((lab) => ({ lab, operation: 'set-up', centre: 'wax' })),
    );
    const phases = work(aLab('own', none), aLab('other', bits(isOpen)));
    expect(planOffers(aProblem({ phases }), 1).offers).toHaveLength(1);
  });

  it('names a longest wait between visits that ends before the shortest ones are over, and by how much', () => {
    const lag = (key: string, from: number, to: number, tables: ArcTables) =>
      ({ key, from, to, anchor: 'end', ...tables, byClinic: null }) as const;
    const shortest = [lag('heal', 0, 1, atLeast(7)), lag('settle', 1, 2, atLeast(7))];
    const refusal = refusalOf(aProblem({ lags: [...shortest, lag('record', 0, 2, atMost(12))] }));
    expect([refusal.code, refusal.details]).toEqual([
      'planner.contradictory-waits',
      { longest: 'record', shortest: ['heal', 'settle'], missingSlots: 4 },
    ]);
    expect(planOffers(aProblem({ lags: [...shortest, lag('record', 0, 2, atMost(16))] }), 1).offers).toHaveLength(1);
  });

  it('names a longest wait that laboratory work cannot keep even on empty benches', () => {
    const impression = (slots: number) =>
      ({ key: 'impression', from: 'after', to: 'before', anchor: 'end', ...atMost(slots), byClinic: null }) as const;
    const full = bits((slot) => isOpen(slot) && slot >= 10);
    const refusal = refusalOf(aProblem({ phases: work(aLab('own', full, [impression(5)])) }));
    expect([refusal.code, refusal.details]).toEqual([
      'planner.contradictory-work',
      { phase: 'trial', waits: ['impression'] },
    ]);
    expect(planOffers(aProblem({ phases: work(aLab('own', full, [impression(8)])) }), 1).offers).toHaveLength(1);
  });

  it('claims nothing where bookings alone are in the way', () => {
    const taken = bits((slot) => isOpen(slot) && slot % 10 >= 2);
    expect(planOffers(aProblem({ phases: work(aLab('own', taken)) }), 1)).toMatchObject({ offers: [{}] });
    const visits = [aVisit('first', null), aVisit('second', 0), aVisit('third', 1)].map((visit) => ({
      ...visit,
      options: visit.options.map((option) => ({ ...option, chairs: [{ key: 'chair', free: bits(() => false) }] })),
    }));
    expect(planOffers(aProblem({ visits }), 1)).toEqual({ front: [], offers: [] });
  });
});
