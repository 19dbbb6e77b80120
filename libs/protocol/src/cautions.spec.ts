import { cautions } from './cautions.js';
import type { PathVisit } from './path-schema.js';
import { PARTS_IN } from './paths/notation.js';
import { shippedPaths } from './paths/shipped.js';

const VISITS = shippedPaths.flatMap(({ code, visits }) =>
  visits.map((visit) => [`${code} ${visit.code}`, visit] as const),
);

/** Where the work can hurt somebody, and what has to be said there. */
const WHERE: readonly {
  readonly what: string;
  readonly is: (visit: PathVisit) => boolean;
  readonly codes: string[];
}[] = [
  {
    what: 'material goes into the mouth',
    is: ({ milestone }) => /impression|pick-up/.test(milestone) || milestone === 'examination',
    codes: ['aspiration', 'material-allergy'],
  },
  { what: 'a tracing set is laid out', is: ({ kits }) => kits.includes('tracing-set'), codes: ['intraoral-tracing'] },
  {
    what: 'teeth or bone are operated on',
    is: ({ skills, pointOfNoReturn }) =>
      pointOfNoReturn === 'extraction' || pointOfNoReturn === 'surgery' || skills.includes('oral-surgery'),
    codes: ['extraction-and-anticoagulants', 'osteonecrosis', 'general-health'],
  },
  {
    what: 'resin sets in the mouth',
    is: ({ milestone }) => milestone === 'attachment-pick-up',
    codes: ['monomer-and-heat', 'locked-denture'],
  },
  { what: 'a case begins', is: ({ milestone }) => milestone === 'examination', codes: ['informed-consent'] },
];

describe('cautions', () => {
  it.each(VISITS)('of %s name every hazard of the work', (_, visit) => {
    const wanted = WHERE.filter(({ is }) => is(visit)).flatMap(({ codes }) => codes);
    expect(visit.cautions).toEqual(expect.arrayContaining(['two-identifiers', ...wanted]));
  });

  it('are all shown somewhere, with a text and a source', () => {
    const shown = new Set(VISITS.flatMap(([, visit]) => visit.cautions));
    expect(cautions.filter(({ code }) => !shown.has(code))).toEqual([]);
    expect(cautions.every(({ text, source }) => text.length > 15 && source.length > 5)).toBe(true);
  });

  it('come with a count of parts wherever a tracing set is laid out', () => {
    const traced = VISITS.filter(([, { kits }]) => kits.includes('tracing-set'));
    expect(traced.length).toBeGreaterThan(1);
    for (const [, { checklist }] of traced) {
      expect(checklist.filter(({ counted }) => counted).map(({ code }) => code)).toEqual([PARTS_IN, 'parts-out']);
    }
  });
});
