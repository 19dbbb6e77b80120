import type { RecordCapture } from '@archwright/contracts';
import { stageWords } from '../words/chair.js';
import { CLOSURE_NUMBERS, readClosures, readNumbers } from './finding-numbers.js';
import { typedNumber } from './typed-number.js';

type CentricRecord = RecordCapture['otherCentricRelation'][number];
type MarkedDimension = NonNullable<CentricRecord['occlusalVerticalDimension']>;

/** Range of the occlusal vertical dimension in the contract, mm. */
const DIMENSION_MM = { min: 38, max: 98 };

export const CENTRIC_METHODS = [
  'bimanual-guidance',
  'chin-point-guidance',
  'swallowing',
  'functional',
  'wax-record',
] as const;

/** A record of the centric relation by another method than tracing, as typed. */
export interface CentricDraft extends Record<(typeof CLOSURE_NUMBERS)[number], string> {
  method: CentricRecord['method'];
  dimensionMm: string;
  landmarks: string;
}

export const nextCentric = (): CentricDraft => ({
  method: 'bimanual-guidance',
  dimensionMm: '',
  landmarks: '',
  closureCount: '',
  closureRmsMm: '',
  closureMaxPairMm: '',
});

/** A saved record in one line. */
export function centricInWords({ method, occlusalVerticalDimension: dimension, closures }: CentricRecord): string {
  return [
    stageWords.centricMethods[method],
    dimension ? stageWords.tracedAt(dimension.valueMm) : '',
    closures ? stageWords.closed(closures.count, closures.rmsMm) : '',
  ]
    .filter(Boolean)
    .join(' · ');
}

/** An occlusal vertical dimension counts only together with the marks between which it was measured. */
export function readDimension(
  typed: { dimensionMm: string; landmarks: string },
  at: string,
  errors: Record<string, string>,
): MarkedDimension | undefined {
  if (typed.dimensionMm.trim() === '') return undefined;
  const valueMm = typedNumber(typed.dimensionMm);
  if (valueMm === null || valueMm < DIMENSION_MM.min || valueMm > DIMENSION_MM.max) {
    errors[`${at}|dimensionMm`] = stageWords.tracingRange(DIMENSION_MM.min, DIMENSION_MM.max);
    return undefined;
  }
  if (typed.landmarks === '') {
    errors[`${at}|landmarks`] = stageWords.methodMissing;
    return undefined;
  }
  return { valueMm, landmarks: typed.landmarks };
}

/** @returns the record as it would be saved, or nothing with the refusals added to `errors` */
export function readCentric(draft: CentricDraft, at: string, errors: Record<string, string>): CentricRecord[] {
  const dimension = readDimension(draft, at, errors);
  const closures = readClosures(readNumbers(draft, CLOSURE_NUMBERS, at, errors), at, errors);
  return [
    {
      method: draft.method,
      ...(dimension ? { occlusalVerticalDimension: dimension } : {}),
      ...(closures ? { closures } : {}),
    },
  ];
}
