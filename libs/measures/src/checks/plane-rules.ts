import { measurementByCode } from '../catalogue/catalogue.js';
import type { NumberMeasurement } from '../measurement.js';
import { commonPractice, isWithin, published, rangeText } from '../standing.js';
import { asymmetryMm } from '../vertical/derived.js';
import type { LimitCode } from './limits.js';
import { cautions, passes, type CheckRule, type Outcome } from './rule.js';
import type { Stage } from './stage.js';

/** A tilt of the plane: beyond usual look again, beyond the second limit set it again. Never more than a caution. */
function judgeTilt(stage: Stage, code: string, repeatAt: LimitCode, side?: 'right' | 'left'): Outcome[] {
  const summary = stage.summary(code, side === undefined ? {} : { side });
  const measurement = measurementByCode(code) as NumberMeasurement;
  const usual = stage.settings.usual(measurement, stage.person);
  if (summary === null || usual === null) return [];
  const repeat = stage.limit(repeatAt);
  const value = summary.median;
  const said = `${measurement.name}${side === undefined ? '' : `, ${side} side`}: ${String(value)} deg`;
  const limit = `usually ${rangeText(usual.range, 'deg')}`;
  const common = {
    value,
    unit: 'deg',
    limit,
    measurement: code,
    source: usual.source,
    ...(side === undefined ? {} : { side }),
  };
  if (isWithin(usual.range, value)) return [passes({ ...common, reason: `${said}; ${limit}.` })];
  return Math.abs(value) > repeat.value
    ? [
        cautions({
          ...common,
          source: repeat.source,
          reason: `${said}; more than ${String(repeat.value)} deg: set the plane again.`,
          action: 'repeat',
        }),
      ]
    : [cautions({ ...common, reason: `${said}; ${limit}. Look again from the front and the side.` })];
}

const sagittalPlane: CheckRule = {
  code: 'ala-tragus-plane',
  version: 1,
  name: 'Occlusal plane to the ala-tragus line',
  milestones: ['jaw-relation', 'trial'],
  source: published('sources disagree on the tragus point'),
  cautionText: 'Record which tragus point was used.',
  evaluate: (stage) =>
    (['right', 'left'] as const).flatMap((side) =>
      judgeTilt(stage, 'occlusal-plane-to-ala-tragus-line', 'sagittal-plane-repeat-deg', side),
    ),
};

const frontalPlane: CheckRule = {
  code: 'interpupillary-plane',
  version: 1,
  name: 'Anterior plane to the interpupillary line',
  milestones: ['jaw-relation', 'trial'],
  source: commonPractice(),
  cautionText: 'Eyes are not always level.',
  evaluate: (stage) => judgeTilt(stage, 'anterior-plane-to-interpupillary-line', 'frontal-plane-repeat-deg'),
};

const canineLines: CheckRule = {
  code: 'canine-line-symmetry',
  version: 1,
  name: 'Canine lines are symmetric',
  milestones: ['jaw-relation'],
  source: commonPractice(),
  cautionText: 'Check the midline first.',
  evaluate(stage) {
    const right = stage.summary('canine-line-distance', { side: 'right' });
    const left = stage.summary('canine-line-distance', { side: 'left' });
    const usual = stage.settings.usual(measurementByCode('canine-line-asymmetry') as NumberMeasurement, {});
    if (right === null || left === null || usual === null) return [];
    const value = asymmetryMm({ rightMm: right.median, leftMm: left.median });
    const limit = `usually ${rangeText(usual.range, 'mm')}`;
    const common = { value, unit: 'mm', limit, measurement: 'canine-line-asymmetry', source: usual.source };
    const said = `Canine lines: right minus left ${String(value)} mm`;
    return isWithin(usual.range, value)
      ? [passes({ ...common, reason: `${said}; ${limit}.` })]
      : [cautions({ ...common, reason: `${said}; ${limit}. Check the midline.` })];
  },
};

export const PLANE_RULES: readonly CheckRule[] = [sagittalPlane, frontalPlane, canineLines];
