import type { TracingEntry } from '@archwright/measures';
import type { Evaluation, NoApex } from './evaluation.js';

/** What no drawing shows: the clinician says it. */
export type Circumstances = Pick<
  TracingEntry,
  'basesMoved' | 'contact' | 'pain' | 'occlusalVerticalDimension' | 'verticalDimensionChangedAfter'
>;

/** Digits that a drawing in tenths of a millimetre supports; longer ones would only look exact. */
const rounded = (value: number): number => Math.round(value * 100) / 100;

/** An evaluation in the terms of the checks of a visit. */
export function toTracingEntry(evaluation: Evaluation | NoApex, circumstances: Circumstances): TracingEntry {
  if (evaluation.apex === null) return { apex: 'none', ...circumstances };
  const { form, roundingRadiusMm, arms, asymmetryDeg, dorsalExtensionMm, closures, offsetMm, doubts } = evaluation;
  return {
    apex: evaluation.apexCount,
    ...(form === 'double' ? {} : { form }),
    ...circumstances,
    ...(roundingRadiusMm === null ? {} : { roundingRadiusMm: rounded(roundingRadiusMm) }),
    armRmsMm: rounded(Math.max(arms.right.rmsMm, arms.left.rmsMm)),
    asymmetryDeg: rounded(asymmetryDeg),
    ...(dorsalExtensionMm === null ? {} : { dorsalExtensionMm: rounded(dorsalExtensionMm) }),
    ...(closures === null
      ? {}
      : {
          closures: {
            count: closures.n,
            rmsMm: rounded(closures.rmsMm),
            maxPairMm: rounded(closures.maxPairMm),
          },
        }),
    ...(offsetMm === null ? {} : { offsetMm: rounded(offsetMm) }),
    ...(doubts.length === 0 ? {} : { doubts }),
  };
}
