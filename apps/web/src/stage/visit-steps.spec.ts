import type { StageView } from '@archwright/contracts';
import { aStage } from './stage.builder.js';
import { sectionsOf, visitSteps } from './visit-steps.js';

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

it.each([
  ['planned', null, ['capture', 'photographs', 'verdicts']],
  [
    'in-progress',
    { signedAt: null, signedBy: null },
    ['capture', 'photographs', 'verdicts', 'prescription', 'complete'],
  ],
  ['passed', { signedAt: null, signedBy: null }, ['capture', 'photographs', 'verdicts', 'prescription']],
] as const)('lists of a %s stage with the prescription %j what the page shows: %j', (state, prescription, sections) => {
  expect(sectionsOf(aStage({ milestones: [], state, prescription }))).toEqual(sections);
});

it('lists checklist and gates where there are any', () => {
  const gates: StageView['gates'] = [
    {
      code: 'consent',
      title: '',
      hard: true,
      open: true,
      missing: [],
      overridable: false,
      closesAtHandOver: false,
      overriddenBy: null,
    },
  ];
  const checklist = [{ code: 'mucosa', text: '', counted: false, done: false, count: null }];
  expect(sectionsOf(aStage({ milestones: [], gates, checklist }))).toEqual([
    'checklist',
    'capture',
    'photographs',
    'verdicts',
    'gates',
    'complete',
  ]);
});

it('lists vertical dimension and teeth where the jaw relation is judged', () => {
  expect(sectionsOf(aStage({}))).toEqual(expect.arrayContaining(['vertical', 'teeth']));
});
