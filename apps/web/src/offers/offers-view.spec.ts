import type { CasePlan } from '@archwright/contracts';
import { ProblemError } from '../api/errors.js';
import { deliveryWords, firmChoices, offersOfConflict, relaxed } from './offers-view.js';

const plan: CasePlan = { visits: [], labSteps: [], transports: [], deliveryOn: '2027-01-28', reasons: [], givesUp: [] };
const id = '019b0000-0000-7000-8000-000000000001';
const conflict = (status: number, offers: unknown): ProblemError =>
  new ProblemError({ type: 'about:blank', title: 'Taken', status, detail: '', code: 'x.taken', offers });

it('writes the delivery date out, or says that only checks remain', () => {
  expect(deliveryWords(plan, '2026-12-20')).toBe('Thursday 28 January 2027');
  expect(deliveryWords({ ...plan, deliveryOn: null }, '2026-12-20')).toBe('Only checks remain');
});

describe('offersOfConflict', () => {
  const fresh = [{ id, planHash: 'h', label: 'Earliest delivery', plan }];

  it('takes fresh offers from a conflict, as a list or as a whole answer', () => {
    expect(offersOfConflict(conflict(409, fresh), id)?.offers).toHaveLength(1);
    expect(offersOfConflict(conflict(409, { caseId: id, offers: fresh, whyNot: null }), id)?.offers).toHaveLength(1);
  });

  it('leaves other refusals, and conflicts without offers, to be shown as they are', () => {
    expect(offersOfConflict(conflict(422, fresh), id)).toBeNull();
    expect(offersOfConflict(conflict(409, undefined), id)).toBeNull();
    expect(offersOfConflict(new Error('x'), id)).toBeNull();
  });
});

it('adds one relaxation to those already agreed', () => {
  const once = relaxed({ count: 3 }, { relax: { anyClinician: true } });
  expect(relaxed(once, { extraWaitDays: { D2: 5 } })).toEqual({
    count: 3,
    relax: { anyClinician: true, extraWaitDays: { D2: 5 } },
  });
});

it('never offers to make all visits firm under the name of "the next"', () => {
  const visit = { title: 'x' } as CasePlan['visits'][number];
  expect(firmChoices({ ...plan, visits: [visit, visit, visit] })).toEqual([1, 2]);
  expect(firmChoices(plan)).toEqual([]);
});
