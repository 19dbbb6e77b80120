import type { Sex } from '../measurement.js';
import { fromMemory, published, type Source } from '../standing.js';

export const TOOTH_TARGETS = ['six-anterior-width', 'central-incisor-width', 'intercanine-distance'] as const;
export type ToothTarget = (typeof TOOTH_TARGETS)[number];

/** One published relation of a face width and a tooth width, with what contradicts it. */
export interface ToothRelation {
  readonly code: string;
  /** Measurement of the face it starts from. */
  readonly from: string;
  readonly target: ToothTarget;
  readonly formula: string;
  /** Null where only a correlation is published and no numbers were seen. */
  readonly estimateMm: ((widthMm: number) => number) | null;
  /** In place of it where the paper tells the relation of women and of men, and the patient's sex is stated. */
  readonly bySex?: Readonly<
    Record<Sex, { readonly formula: string; readonly estimateMm: (widthMm: number) => number }>
  >;
  readonly source: Source;
  readonly disagreements: readonly string[];
}

/**
 * Spread of the tooth width itself, one standard deviation: the scatter of the relations is not published, and no
 * relation can be better known than this suggests.
 */
export const TARGET_SPREAD: Readonly<Record<ToothTarget, { readonly sdMm: number; readonly source: Source }>> = {
  'six-anterior-width': { sdMm: 2.07, source: published('48.23, SD 2.07, Iranian adults (Dental Anthropology)') },
  'central-incisor-width': {
    sdMm: 0.5,
    source: published('8.87, SD 0.5 men; 8.68, SD 0.4 women, n=229 (J Prosthet Dent 2002); the larger SD is used'),
  },
  'intercanine-distance': { sdMm: 2.05, source: published('34.15, SD 2.05, Iranian adults (Dental Anthropology)') },
};

const NO_CORRELATION = 'No correlation of interalar width with any tooth width in 150 Yemeni adults.';
const VARIES = 'Means 35.2 and 34.8 mm agree in 316 people, with very large individual variation (Woelfel 2014).';

export const TOOTH_RELATIONS: readonly ToothRelation[] = [
  {
    code: 'interalar-plus-seven',
    from: 'interalar-width',
    target: 'six-anterior-width',
    formula: 'interalar width + 7 mm',
    estimateMm: (width) => width + 7,
    source: fromMemory('Mavroskoufis & Ritchie 1981'),
    disagreements: ['At the Iranian means it gives 43.38 against 48.23 mm: 4.85 too narrow there.', NO_CORRELATION],
  },
  {
    code: 'interalar-times-1.31',
    from: 'interalar-width',
    target: 'six-anterior-width',
    formula: 'interalar width × 1.31, round the curve',
    estimateMm: (width) => width * 1.31,
    source: fromMemory('Hoffman 1986'),
    disagreements: ['At the Iranian means it gives 47.66 against 48.23 mm.', NO_CORRELATION],
  },
  {
    code: 'interalar-canine-tips',
    from: 'interalar-width',
    target: 'intercanine-distance',
    formula: 'interalar width − 2.23 mm (difference of the means)',
    estimateMm: (width) => width - 2.23,
    source: published('means 36.38 and 34.15 mm, weak to moderate association, Iranian adults (Dental Anthropology)'),
    disagreements: [
      VARIES,
      'Differs from interalar, canthal, pupillary and mouth width in 409 people (Heliyon 2024;10:e27642).',
    ],
  },
  {
    code: 'inner-canthal-golden',
    from: 'inner-canthal-width',
    target: 'central-incisor-width',
    formula: 'inner canthal width × 0.618 / 2',
    estimateMm: (width) => (width * 0.618) / 2,
    source: published('n=229, fits the means: 8.87 against 8.87 men, 8.62 against 8.68 women (J Prosthet Dent 2002)'),
    disagreements: ['Means agree; single people were not shown to.'],
  },
  {
    code: 'bizygomatic-sixteenth',
    from: 'bizygomatic-width',
    target: 'central-incisor-width',
    formula: 'bizygomatic width / 16',
    estimateMm: (width) => width / 16,
    source: fromMemory('Berry’s ratio'),
    disagreements: [
      'Ratio not confirmed: 15.56 observed, low correlations, n=149 (Radia, J Prosthet Dent 2016;115:741).',
      'Not correlated in 236 people (Sayed 2017). One study of 100 supports it.',
    ],
  },
  {
    code: 'bizygomatic-observed-ratio',
    from: 'bizygomatic-width',
    target: 'central-incisor-width',
    formula: 'bizygomatic width / 15.56',
    estimateMm: (width) => width / 15.56,
    bySex: {
      female: { formula: 'bizygomatic width / 15.37, as in women', estimateMm: (width) => width / 15.37 },
      male: { formula: 'bizygomatic width / 15.75, as in men', estimateMm: (width) => width / 15.75 },
    },
    source: published('observed ratio 15.56 (men 15.75, women 15.37), n=149 (Radia, J Prosthet Dent 2016;115:741)'),
    disagreements: ['Low correlations in the same people.'],
  },
  {
    code: 'bizygomatic-over-3.3',
    from: 'bizygomatic-width',
    target: 'six-anterior-width',
    formula: 'bizygomatic width / 3.3',
    estimateMm: (width) => width / 3.3,
    source: fromMemory('textbook, weak'),
    disagreements: ['Bizygomatic width was not correlated with the central incisor in 236 people (Sayed 2017).'],
  },
  {
    code: 'interpupillary-correlation',
    from: 'interpupillary-distance',
    target: 'six-anterior-width',
    formula: 'correlated; no coefficients seen',
    estimateMm: null,
    source: published('correlated with the six-tooth width in 150 Yemeni adults'),
    disagreements: ['Differs from the canine distance in 409 people (Heliyon 2024;10:e27642).'],
  },
];
