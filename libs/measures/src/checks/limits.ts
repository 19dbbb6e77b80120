import { commonPractice, fromMemory, projectDefault, type ClosedRange, type Source } from '../standing.js';

/** One number that a rule compares with. Usual ranges of single measurements stand in the catalogue instead. */
export interface RuleLimit {
  readonly code: string;
  readonly value: number;
  readonly unit: 'mm' | 'deg' | 'ratio' | 'count' | 'points';
  readonly meaning: string;
  readonly source: Source;
  /** How far a practice may move it. Null: not at all. */
  readonly adjustable: ClosedRange | null;
}

const UNPUBLISHED = projectDefault();

/** The limits of all rules. */
export const RULE_LIMITS = [
  {
    code: 'reading-spread-mm',
    value: 2,
    unit: 'mm',
    meaning: 'largest spread of repeated vertical readings',
    source: UNPUBLISHED,
    adjustable: { min: 0.5, max: 5 },
  },
  {
    code: 'rest-distance-none-mm',
    value: 0,
    unit: 'mm',
    meaning: 'at or below it there is no rest distance',
    source: commonPractice('geometry: without rest distance the teeth never part'),
    adjustable: null,
  },
  {
    code: 'rest-distance-large-mm',
    value: 6,
    unit: 'mm',
    meaning: 'above it the occlusal vertical dimension is probably reduced',
    source: UNPUBLISHED,
    adjustable: { min: 4, max: 12 },
  },
  {
    code: 'swallow-difference-mm',
    value: 2,
    unit: 'mm',
    meaning: 'largest difference of swallowing and occlusal vertical dimension',
    source: fromMemory('textbook cross-check'),
    adjustable: { min: 1, max: 5 },
  },
  {
    code: 'kept-dimension-mm',
    value: 1,
    unit: 'mm',
    meaning: 'largest difference of the occlusal vertical dimension from the visit before',
    source: UNPUBLISHED,
    adjustable: { min: 0.5, max: 5 },
  },
  {
    code: 'sagittal-plane-repeat-deg',
    value: 8,
    unit: 'deg',
    meaning: 'above it the sagittal plane is set again',
    source: UNPUBLISHED,
    adjustable: { min: 5, max: 15 },
  },
  {
    code: 'frontal-plane-repeat-deg',
    value: 3,
    unit: 'deg',
    meaning: 'above it the frontal plane is set again',
    source: UNPUBLISHED,
    adjustable: { min: 2, max: 10 },
  },
  {
    code: 'failed-tracings',
    value: 3,
    unit: 'count',
    meaning: 'failed tracings in one visit before a new visit',
    source: UNPUBLISHED,
    adjustable: { min: 1, max: 5 },
  },
  {
    code: 'impression-tries',
    value: 2,
    unit: 'count',
    meaning: 'impressions of one arch in one visit before a new visit',
    source: commonPractice(),
    adjustable: { min: 1, max: 4 },
  },
  {
    code: 'tracing-rounding-mm',
    value: 0.5,
    unit: 'mm',
    meaning: 'rounding radius of the apex',
    source: UNPUBLISHED,
    adjustable: { min: 0.1, max: 3 },
  },
  {
    code: 'tracing-arm-rms-mm',
    value: 0.2,
    unit: 'mm',
    meaning: 'scatter of an arm about its line',
    source: UNPUBLISHED,
    adjustable: { min: 0.05, max: 2 },
  },
  {
    code: 'tracing-closure-rms-mm',
    value: 0.3,
    unit: 'mm',
    meaning: 'scatter of the closure points',
    source: UNPUBLISHED,
    adjustable: { min: 0.05, max: 2 },
  },
  {
    code: 'tracing-closure-pair-mm',
    value: 0.8,
    unit: 'mm',
    meaning: 'largest distance of two closure points',
    source: UNPUBLISHED,
    adjustable: { min: 0.1, max: 5 },
  },
  {
    code: 'tracing-offset-mm',
    value: 0.5,
    unit: 'mm',
    meaning: 'closure mean from the apex',
    source: UNPUBLISHED,
    adjustable: { min: 0.1, max: 5 },
  },
  {
    code: 'tracing-asymmetry-deg',
    value: 10,
    unit: 'deg',
    meaning: 'difference of the arm angles',
    source: UNPUBLISHED,
    adjustable: { min: 2, max: 45 },
  },
  {
    code: 'tracing-dorsal-extension-mm',
    value: 0.5,
    unit: 'mm',
    meaning: 'line running behind the apex',
    source: UNPUBLISHED,
    adjustable: { min: 0.1, max: 3 },
  },
  {
    code: 'tracing-closures',
    value: 5,
    unit: 'count',
    meaning: 'closures wanted beside a tracing',
    source: UNPUBLISHED,
    adjustable: { min: 3, max: 20 },
  },
  {
    code: 'kapur-sum-points',
    value: 6,
    unit: 'points',
    meaning: 'sum of both dentures that must be exceeded',
    source: fromMemory('Olshan variant of Kapur’s index'),
    adjustable: { min: 3, max: 9 },
  },
] as const satisfies readonly RuleLimit[];

export type LimitCode = (typeof RULE_LIMITS)[number]['code'];
