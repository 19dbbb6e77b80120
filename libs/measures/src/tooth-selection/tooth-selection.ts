import { measurementByCode } from '../catalogue/catalogue.js';
import { InvalidValueError, TooFewReadingsError } from '../errors.js';
import type { Sex } from '../measurement.js';
import { checkValue } from '../readings/reading.js';
import type { Standing } from '../standing.js';
import { TARGET_SPREAD, TOOTH_RELATIONS, TOOTH_TARGETS, type ToothTarget } from './relations.js';

/** Face widths, mm; at least one. */
export interface FaceWidths {
  readonly interalarMm?: number;
  readonly innerCanthalMm?: number;
  readonly bizygomaticMm?: number;
  readonly interpupillaryMm?: number;
}

/** A tooth width measured on the old denture, a cast, or an earlier photograph. */
export interface MeasuredToothWidth {
  readonly target: ToothTarget;
  readonly object: string;
  readonly valueMm: number;
}

export interface ToothEstimate {
  readonly relation: string;
  readonly from: string;
  readonly fromMm: number;
  readonly target: ToothTarget;
  readonly formula: string;
  /** Centre with twice the spread of the tooth width on either side. All null where only a correlation is published. */
  readonly lowMm: number | null;
  readonly centreMm: number | null;
  readonly highMm: number | null;
  readonly source: string;
  readonly standing: Standing;
  readonly spreadSource: string;
  readonly disagreements: readonly string[];
}

export interface ToothSelection {
  readonly estimates: readonly ToothEstimate[];
  /** For each target that has an estimate: from the lowest to the highest end of all ranges. Never one number. */
  readonly ranges: readonly { readonly target: ToothTarget; readonly lowMm: number; readonly highMm: number }[];
  readonly measured: readonly MeasuredToothWidth[];
  readonly note: string;
}

const FIELDS = {
  interalarMm: 'interalar-width',
  innerCanthalMm: 'inner-canthal-width',
  bizygomaticMm: 'bizygomatic-width',
  interpupillaryMm: 'interpupillary-distance',
} as const satisfies Record<keyof FaceWidths, string>;

/** Either side of an estimate, in standard deviations of the tooth width (project default). */
const SPREADS = 2;

/**
 * Tooth widths that published relations give for a face, as ranges with their disagreements, beside what was measured.
 *
 * @param sex when stated, chooses the relation that a paper tells for women or for men
 * @throws {TooFewReadingsError} without any face width; {@link ImplausibleValueError} or {@link InvalidValueError} for a
 *   width that no face or tooth has
 */
export function toothSelection(
  face: FaceWidths,
  measured: readonly MeasuredToothWidth[] = [],
  sex: Sex | null = null,
): ToothSelection {
  const given = Object.entries(FIELDS).flatMap(([field, code]) => {
    const value = face[field as keyof FaceWidths];
    return value === undefined ? [] : [{ code, widthMm: Number(checkValue(code, value)) }];
  });
  if (given.length === 0) throw new TooFewReadingsError('Face widths for tooth selection', 0, 1);
  for (const { target, valueMm } of measured) {
    if (!TOOTH_TARGETS.includes(target))
      throw new InvalidValueError('not-an-option', 'tooth width', target, TOOTH_TARGETS.join(', '));
    checkValue(target, valueMm);
  }
  const estimates = given.flatMap(({ code, widthMm }) =>
    TOOTH_RELATIONS.filter((relation) => relation.from === code).map((relation): ToothEstimate => {
      const spread = TARGET_SPREAD[relation.target];
      const { formula, estimateMm } = (sex === null ? undefined : relation.bySex?.[sex]) ?? relation;
      const centre = estimateMm?.(widthMm) ?? null;
      const reach = SPREADS * spread.sdMm;
      return {
        relation: relation.code,
        from: code,
        fromMm: widthMm,
        target: relation.target,
        formula,
        lowMm: centre === null ? null : centre - reach,
        centreMm: centre,
        highMm: centre === null ? null : centre + reach,
        source: relation.source.text,
        standing: relation.source.standing,
        spreadSource: spread.source.text,
        disagreements: relation.disagreements,
      };
    }),
  );
  return { estimates, ranges: TOOTH_TARGETS.flatMap((target) => hullOf(target, estimates)), measured, note: NOTE };
}

const NOTE = `${measurementByCode('interalar-width').caution} The width of each range is twice the spread of the teeth themselves (project default), because the scatter of the relations is not published.`;

function hullOf(target: ToothTarget, estimates: readonly ToothEstimate[]): ToothSelection['ranges'] {
  const own = estimates.filter((estimate) => estimate.target === target);
  const lows = own.flatMap((estimate) => (estimate.lowMm === null ? [] : [estimate.lowMm]));
  const highs = own.flatMap((estimate) => (estimate.highMm === null ? [] : [estimate.highMm]));
  return lows.length === 0 ? [] : [{ target, lowMm: Math.min(...lows), highMm: Math.max(...highs) }];
}
