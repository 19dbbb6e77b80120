import { checkPath, parsePath } from './check-path.js';
import { PathInvalidError } from './errors.js';
import type { TreatmentPath } from './path-schema.js';
import { conventional } from './paths/conventional.js';
import { after, captured, hardGate, lag, typical } from './paths/notation.js';

const rules = (change: Partial<TreatmentPath>) =>
  checkPath({ ...conventional, ...change }).map((each) => [each.rule, each.part]);
const phases = (change: (phase: TreatmentPath['labPhases'][number]) => TreatmentPath['labPhases'][number]) => ({
  labPhases: conventional.labPhases.map(change),
});

describe('checking a path', () => {
  it.each<[string, Partial<TreatmentPath>, string, string]>([
    [
      'a code used twice',
      { visits: [...conventional.visits, ...conventional.visits.slice(-1)] },
      'unique-code',
      'visit RN',
    ],
    [
      'steps that wait for each other',
      phases((phase) => ({
        ...phase,
        steps: phase.steps.map((each) => (each.code === 'mount' ? { ...each, after: [after('contour')] } : each)),
      })),
      'cycle',
      'phase set-up',
    ],
    [
      'a gate that asks for what is captured later',
      {
        gates: [hardGate('too-early', 'Too early', { kind: 'visit', code: 'V2' }, captured('V3', 'centric-relation'))],
      },
      'gate-not-measurable',
      'gate too-early',
    ],
    [
      'a gate on what its visit does not capture',
      { gates: [hardGate('not-there', 'Not there', { kind: 'visit', code: 'V3' }, captured('V2', 'occlusion'))] },
      'gate-not-measurable',
      'gate not-there',
    ],
    [
      'a minimum above its maximum',
      {
        lags: [
          lag('turned', 'Turned', ['V1', 'V2'], { min: typical(9, 'calendar-days'), max: typical(2, 'calendar-days') }),
        ],
      },
      'lag-order',
      'lag turned',
    ],
    ['a lag that runs backwards', { lags: [lag('back', 'Back', ['V3', 'V2'], {})] }, 'lag-direction', 'lag back'],
    [
      'no placement',
      { visits: conventional.visits.map((each) => ({ ...each, isDelivery: false })) },
      'delivery-missing',
      'visits',
    ],
    [
      'a wait that work in between cannot keep',
      { lags: [...conventional.lags, lag('short', 'Short', ['V4', 'V5'], { max: typical(600, 'minutes') })] },
      'delivery-unreachable',
      'phase processing',
    ],
    [
      'a loop forward',
      {
        loops: conventional.loops.map((each) =>
          each.code === 'looks-refused' ? { ...each, remedy: { kind: 'return', to: 'cure' } } : each,
        ),
      },
      'loop-return',
      'loop looks-refused',
    ],
    [
      'a loop that discards what is not made yet',
      {
        loops: conventional.loops.map((each) =>
          each.code === 'rim-unstable' ? { ...each, discards: ['finished-denture'] } : each,
        ),
      },
      'loop-discard',
      'loop rim-unstable',
    ],
  ])('names %s', (_, change, rule, part) => {
    expect(rules(change).map(([found]) => found)).toContain(rule);
    if (rule !== 'delivery-unreachable') expect(rules(change)).toContainEqual([rule, part]);
  });

  it('says where a fault is and what it is about apart from its sentence', () => {
    const late = hardGate('too-early', 'Too early', { kind: 'visit', code: 'V2' }, captured('V3', 'centric-relation'));
    const [fault] = checkPath({ ...conventional, gates: [late] });
    expect(fault).toMatchObject({
      at: { kind: 'gate', code: 'too-early', field: 'requires.0' },
      fault: 'asks-later',
      values: { at: 'V3' },
    });
  });

  it('refuses data of another shape with the field’s name', () => {
    const error = (() => {
      try {
        parsePath({ ...conventional, version: 0 });
      } catch (caught) {
        return caught;
      }
      return null;
    })();
    expect(error).toBeInstanceOf(PathInvalidError);
    expect((error as PathInvalidError).details['problems']).toMatchObject([{ rule: 'schema', part: 'version' }]);
  });
});
