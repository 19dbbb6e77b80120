import { visitSteps } from './visit-steps.js';

const visit = (state: 'booked' | 'arrived' | 'in-progress' | 'completed') => ({
  id: 'v',
  version: 1,
  state,
  startsAt: '2027-01-05T09:00:00Z',
  endsAt: '2027-01-05T10:00:00Z',
  clinicName: 'North',
  clinicianName: 'Dr A. Example',
});

it.each([
  ['booked', 'planned', ['start', 'arrive']],
  ['arrived', 'planned', ['start']],
  ['in-progress', 'in-progress', []],
  ['in-progress', 'passed', ['finish']],
  ['completed', 'passed', []],
] as const)('offers for a %s visit of a %s stage: %j', (of, state, steps) => {
  expect(visitSteps({ state, visit: visit(of) })).toEqual(steps);
});

it('offers nothing while no visit is booked', () => {
  expect(visitSteps({ state: 'waiting', visit: null })).toEqual([]);
});
