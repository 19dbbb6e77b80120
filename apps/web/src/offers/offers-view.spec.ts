import type { CasePlan } from '@archwright/contracts';
import { ProblemError } from '../api/errors.js';
import { deliveryWords, firmChoices, offersOfConflict, visitLines } from './offers-view.js';

const plan: CasePlan = { visits: [], labSteps: [], transports: [], deliveryOn: '2027-01-28', reasons: [], givesUp: [] };
const id = '019b0000-0000-7000-8000-000000000001';
const conflict = (status: number, offers: unknown): ProblemError =>
  new ProblemError({ type: 'about:blank', title: 'Taken', status, detail: '', code: 'x.taken', offers });

it('writes the delivery date out, or says that only checks remain', () => {
  expect(deliveryWords(plan, '2026-12-20')).toBe('Thursday 28 January 2027');
  expect(deliveryWords({ ...plan, deliveryOn: null }, '2026-12-20')).toBe('Only checks remain');
});

it('reads visits out on the wall of their clinic, and marks those against a wish', () => {
  const visit = {
    title: 'Trial placement',
    startsAt: '2027-07-01T08:30:00Z',
    zone: 'Europe/London',
    clinicName: 'North clinic',
    clinicianName: 'Dr Example',
    asWished: false,
  } as CasePlan['visits'][number];
  expect(visitLines({ ...plan, visits: [visit] }, { today: '2027-06-01', viewer: 'America/New_York' })).toEqual([
    {
      key: '2027-07-01T08:30:00Z Trial placement',
      when: 'Thu 1 Jul, 09:30 London time',
      title: 'Trial placement',
      where: 'North clinic, Dr Example',
      againstWish: true,
    },
  ]);
});

describe('offersOfConflict', () => {
  const fresh = {
    caseId: id,
    offers: [{ id, planHash: 'h', label: 'Earliest placement', told: { code: 'label-earliest', values: {} }, plan }],
    whyNot: null,
  };

  it('takes fresh offers from a conflict', () => {
    expect(offersOfConflict(conflict(409, fresh))).toEqual(fresh);
  });

  it('leaves other refusals, and conflicts without offers, to be shown as they are', () => {
    expect(offersOfConflict(conflict(422, fresh))).toBeNull();
    expect(offersOfConflict(conflict(409, undefined))).toBeNull();
    expect(offersOfConflict(new Error('x'))).toBeNull();
  });
});

it('never offers to make all visits firm under the name of "the next"', () => {
  const visit = { title: 'x' } as CasePlan['visits'][number];
  expect(firmChoices({ ...plan, visits: [visit, visit, visit] })).toEqual([1, 2]);
  expect(firmChoices(plan)).toEqual([]);
});
