import { shippedPaths, type TreatmentPath } from '@archwright/protocol';
import { differenceRows } from './difference-words.js';
import {
  ownSpan,
  withArrow,
  withGate,
  withGateBefore,
  withLag,
  withLoop,
  withMinutes,
  withObject,
  withPhase,
  withStep,
  withVisit,
} from './path-change.js';
import { withVisitAt } from './path-shape.js';
import { withStepAfter } from './step-shape.js';

const found = shippedPaths.find(({ code }) => code === 'conventional');
if (found === undefined) throw new Error('The conventional path is shipped.');
const path: TreatmentPath = found;
const rows = (after: TreatmentPath) =>
  differenceRows(path, after).map(({ where, kind, before, after: is }) => [where, kind, before, is]);
const gateOf = (code: string) => {
  const gate = path.gates.find((each) => each.code === code);
  if (gate === undefined) throw new Error('The path has the gate.');
  return gate;
};

it('finds no difference between a path and itself', () => {
  expect(rows(path)).toEqual([]);
});

it.each<[string, TreatmentPath, string[][]]>([
  [
    'minutes, without their source',
    withMinutes('V2', { typical: 80 })(path),
    [['Visit: V2 · Border molding and final impressions, Chair minutes, Usually', 'changed', '75', '80']],
  ],
  [
    'of a list, what came and went',
    withVisit('V2', { cautions: ['two-identifiers', 'aspiration', 'material-allergy', 'osteonecrosis'] })(path),
    [
      [
        'Visit: V2 · Border molding and final impressions, Cautions',
        'changed',
        'Impressions and returned work carry infection',
        'Antiresorptive or anti-angiogenic medicines, radiation of head or neck',
      ],
    ],
  ],
  [
    'a line that is counted now',
    withVisit('V1', {
      checklist: (path.visits[0]?.checklist ?? []).map((line) => ({ ...line, counted: line.code === 'medicines' })),
    })(path),
    [
      [
        'Visit: V1 · Examination, consent, preliminary impressions, Checklist, Medicines and allergies asked, A number is counted',
        'changed',
        'no',
        'yes',
      ],
    ],
  ],
  [
    'an order of visits',
    withVisitAt(path, 'V1', 1),
    [
      [
        'Visits',
        'moved',
        path.visits.map(({ code, title }) => `${code} · ${title}`).join('; '),
        withVisitAt(path, 'V1', 1)
          .visits.map(({ code, title }) => `${code} · ${title}`)
          .join('; '),
      ],
    ],
  ],
  [
    'what a gate asks for and stands before',
    withGate('trial-passed-before-flasking', {
      before: { kind: 'prescription', code: 'V4' },
      requires: [{ kind: 'case-record', record: 'consent' }],
    })(path),
    [
      ['Gate: Trial placement passed, Before', 'changed', 'Flask', 'Prescription after V4 · Trial placement'],
      [
        'Gate: Trial placement passed, Asks for',
        'changed',
        'Visit passed: V4 · Trial placement',
        'In the record: Consent',
      ],
    ],
  ],
  [
    'a gate more',
    withGateBefore(path, { kind: 'visit', code: 'V2' }, 'Own gate').path,
    [['Gate: Own gate', 'added', '–', 'Own gate']],
  ],
  [
    'the limits of an arrow',
    withArrow('mount', 0, { min: ownSpan(null, { amount: 45, unit: 'minutes' }), max: null })(path),
    [
      [
        'Laboratory step: Articulator mounting, After, V3 · Maxillomandibular relationship record, At least',
        'changed',
        '–',
        '45 min, as a rule',
      ],
      [
        'Laboratory step: Articulator mounting, After, V3 · Maxillomandibular relationship record, At most',
        'changed',
        '2 days, as a rule',
        '–',
      ],
    ],
  ],
  [
    'the limits of a wait',
    withLag('rims-to-jaw-relation', { max: ownSpan(null, { amount: 14, firmness: 'hard' }) })(path),
    [['Wait: Occlusion rims not stale, At most', 'changed', '28 days, as a rule', '14 days, must be kept']],
  ],
  [
    'the work of a step',
    withStep('mount', {
      segments: [
        { kind: 'hands-on', minutes: 30, holdsPlace: true },
        { kind: 'unattended', minutes: 60, holdsPlace: true },
      ],
    })(path),
    [
      [
        'Laboratory step: Articulator mounting, Work and waiting',
        'changed',
        'sets or cools: 30 min',
        'machine alone: 60 min',
      ],
    ],
  ],
  [
    'a step less',
    {
      ...path,
      labPhases: path.labPhases.map((phase) => ({
        ...phase,
        steps: phase.steps.filter(({ code }) => code !== 'contour'),
      })),
    },
    [['Laboratory step: Wax contour', 'removed', 'Wax contour', '–']],
  ],
  [
    'work that is sent',
    withPhase('trays', { outward: 'file' })(path),
    [['Laboratory work: V1 to V2, Goes to the laboratory', 'changed', 'carried by courier', 'sent as files']],
  ],
  [
    'what a loop does and discards',
    withLoop('looks-refused', { remedy: { kind: 'repeat-in-visit', tries: 2, minutesEach: 15 }, discards: [] })(path),
    [
      [
        'Way back: Looks refused at trial placement, What happens',
        'changed',
        'The case goes back: Tooth set-up',
        'It is done again in the same visit: 2 × 15 min',
      ],
      ['Way back: Looks refused at trial placement, Is thrown away', 'changed', 'Tooth set-up in wax', '–'],
    ],
  ],
  [
    'where an object is made',
    withObject('mounting', { madeAt: 'before-case', shared: true })(path),
    [
      ['Object: Mounted cast, Made at', 'changed', 'Articulator mounting', 'What the patient brings'],
      ['Object: Mounted cast, One for both jaws', 'changed', 'no', 'yes'],
    ],
  ],
  ['the head of the path', { ...path, arches: ['upper'] }, [['Jaws', 'changed', 'Lower', '–']]],
])('says %s', (_, after, expected) => {
  expect(rows(after)).toEqual(expected);
});

it('names a step that stands between two others, and what follows it now', () => {
  const added = withStepAfter(path, 'mount', { title: 'Own step', workCentre: 'wax' });
  if (added === null) throw new Error('A step fits there.');
  expect(rows(added.path)).toEqual([
    ['Laboratory step: Own step', 'added', '–', 'Own step'],
    ['Laboratory step: Tooth set-up, After, Articulator mounting', 'removed', 'Articulator mounting', '–'],
    ['Laboratory step: Tooth set-up, After, Own step', 'added', '–', 'Own step'],
  ]);
});

it('leaves out where a value is from', () => {
  const gate = gateOf('trial-accepted');
  expect(rows(withGate('trial-accepted', { requires: gate.requires })(path))).toEqual([]);
});
