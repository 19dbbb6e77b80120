import { measurementByCode } from '../catalogue/catalogue.js';
import type { NumberMeasurement } from '../measurement.js';
import { commonPractice, fromMemory, isWithin, projectDefault, rangeText } from '../standing.js';
import { differenceOfSummaries, interocclusalRestDistanceMm, lowerToMiddleThirdPercent } from '../vertical/derived.js';
import { requireSameMethod, tidy } from '../readings/summary.js';
import { cautions, fails, passes, type CheckRule, type Outcome } from './rule.js';
import type { UsualRange } from './settings.js';
import type { Stage } from './stage.js';
import type { LoopTrigger, VerdictAction } from './verdict.js';

const VISITS = ['jaw-relation', 'trial', 'placement'] as const;

/** Where a wrong jaw relation leads: corrected in the chair while it is only rims, back to a stage once teeth are set. */
export function jawRelationWayBack(stage: Stage): { action: VerdictAction; trigger: LoopTrigger } {
  if (stage.isAt('placement', 'review')) return { action: 'return-to-stage', trigger: 'jaw-relation-wrong-after-cure' };
  if (stage.isAt('trial')) return { action: 'return-to-stage', trigger: 'jaw-relation-wrong-at-trial' };
  return { action: 'correct-in-chair', trigger: 'vertical-dimension-out-of-rule' };
}

function usualOf(stage: Stage, code: string): UsualRange {
  const usual = stage.settings.usual(measurementByCode(code) as NumberMeasurement, stage.person);
  if (usual === null) throw new Error(`${code} has no usual range`);
  return usual;
}

const repeatedReadings: CheckRule = {
  code: 'repeated-vertical-readings',
  version: 1,
  name: 'Repeated vertical readings agree',
  milestones: ['examination', ...VISITS],
  source: projectDefault(),
  cautionText: 'Let the patient relax, say "m", and measure again.',
  evaluate(stage) {
    const limit = stage.limit('reading-spread-mm');
    const codes = ['vertical-dimension-at-rest', 'occlusal-vertical-dimension', 'swallow-vertical-dimension'];
    return codes.flatMap((code): Outcome[] => {
      const summary = stage.summary(code);
      if (summary === null || summary.count < 2) return [];
      const name = measurementByCode(code).name;
      const text = `${name}: ${String(summary.count)} readings, median ${String(summary.median)} mm, spread ${String(summary.spread)} mm`;
      const common = {
        value: summary.spread,
        unit: 'mm',
        limit: `at most ${String(limit.value)} mm`,
        measurement: code,
        source: limit.source,
      };
      return summary.spread > limit.value
        ? [
            cautions({
              ...common,
              reason: `${text}: more than ${String(limit.value)} mm apart. Repeat all three.`,
              action: 'repeat',
            }),
          ]
        : [passes({ ...common, reason: `${text}: they agree.` })];
    });
  },
};

export const restDistance: CheckRule = {
  code: 'interocclusal-rest-distance',
  version: 1,
  name: 'Interocclusal rest distance',
  milestones: VISITS,
  source: fromMemory('textbook 2 to 4 mm at the premolars; doubted as a flat rule (Hajimahmoudi 2018)'),
  cautionText: 'One value among several: weigh it against speech, face and comfort before changing anything.',
  evaluate(stage) {
    const rest = stage.summary('vertical-dimension-at-rest');
    const occlusal = stage.summary('occlusal-vertical-dimension');
    if (rest === null || occlusal === null) return [];
    requireSameMethod('Rest and occlusal vertical dimension', rest.method, occlusal.method, ['landmarks', 'posture']);
    const distance = interocclusalRestDistanceMm({ restMm: rest.median, occlusalMm: occlusal.median });
    return judgeRestDistance(
      stage,
      distance,
      `Interocclusal rest distance ${String(distance)} mm (rest ${String(rest.median)} minus occlusal ${String(occlusal.median)})`,
    );
  },
};

/** Only a distance of zero or less fails; every other unusual one is a caution on this value alone. */
export function judgeRestDistance(stage: Stage, distance: number, said: string): readonly Outcome[] {
  const none = stage.limit('rest-distance-none-mm').value;
  const large = stage.limit('rest-distance-large-mm').value;
  const usual = usualOf(stage, 'interocclusal-rest-distance');
  const common = { value: distance, unit: 'mm', measurement: 'interocclusal-rest-distance', source: usual.source };
  if (distance <= none) {
    return [
      fails({
        ...common,
        source: stage.limit('rest-distance-none-mm').source,
        limit: `above ${String(none)} mm`,
        reason: `${said}: no rest distance is left, it must be above ${String(none)} mm. Lower the occlusal vertical dimension and measure again.`,
        ...jawRelationWayBack(stage),
      }),
    ];
  }
  const limit = `usually ${rangeText(usual.range, 'mm')}`;
  if (isWithin(usual.range, distance)) return [passes({ ...common, limit, reason: `${said}: within ${limit}.` })];
  const advice =
    distance > large
      ? `above ${String(large)} mm the occlusal vertical dimension is probably too low`
      : distance > usual.range.max
        ? 'larger than usual'
        : 'smaller than usual';
  return [cautions({ ...common, limit, reason: `${said}: ${advice}; ${limit}. Check with speech and the face.` })];
}

const changeOfDimension: CheckRule = {
  code: 'change-of-vertical-dimension',
  version: 1,
  name: 'Change against the old dentures',
  milestones: VISITS,
  source: commonPractice(),
  cautionText: 'A large change needs time: stages or a temporary appliance.',
  evaluate(stage) {
    const now = stage.summary('occlusal-vertical-dimension');
    const old = stage.summary('old-denture-occlusal-vertical-dimension');
    if (now === null || old === null) return [];
    const change = differenceOfSummaries('New and old occlusal vertical dimension', now, old);
    const usual = usualOf(stage, 'change-of-occlusal-vertical-dimension');
    const limit = `usually ${rangeText(usual.range, 'mm')}`;
    const said = `Occlusal vertical dimension changes by ${String(change)} mm against the old dentures`;
    const common = {
      value: change,
      unit: 'mm',
      limit,
      measurement: 'change-of-occlusal-vertical-dimension',
      source: usual.source,
    };
    if (isWithin(usual.range, change)) return [passes({ ...common, reason: `${said}: ${limit}.` })];
    const advice =
      change > usual.range.max
        ? 'consider raising it in stages or a trial appliance'
        : 'lower than before: is that meant?';
    return [cautions({ ...common, reason: `${said}; ${limit}: ${advice}.` })];
  },
};

const keptDimension: CheckRule = {
  code: 'vertical-dimension-kept',
  version: 1,
  name: 'Occlusal vertical dimension as at the visit before',
  milestones: ['trial', 'placement'],
  source: projectDefault(),
  cautionText: 'Only the clinician changes the vertical dimension; mounting and processing may not.',
  evaluate(stage) {
    const now = stage.summary('occlusal-vertical-dimension');
    const then = stage.before('occlusal-vertical-dimension');
    if (now === null || then === null) return [];
    const difference = differenceOfSummaries('Occlusal vertical dimension now and at the visit before', now, then);
    const allowed = stage.limit('kept-dimension-mm');
    const limit = `within ${String(allowed.value)} mm`;
    const said = `Occlusal vertical dimension ${String(now.median)} mm, ${String(then.median)} mm at the visit before`;
    const common = {
      value: difference,
      unit: 'mm',
      limit,
      measurement: 'occlusal-vertical-dimension',
      source: allowed.source,
    };
    return Math.abs(difference) <= allowed.value
      ? [passes({ ...common, reason: `${said}: ${limit}.` })]
      : [
          cautions({
            ...common,
            reason: `${said}; expected ${limit}. Measure again; if it stays, find out where it changed before anything is processed.`,
            action: 'repeat',
          }),
        ];
  },
};

const facialThirds: CheckRule = {
  code: 'facial-thirds',
  version: 1,
  name: 'Facial thirds',
  milestones: ['examination', ...VISITS],
  source: fromMemory('near-equal thirds'),
  cautionText: 'Proportion is an aid, not a rule.',
  evaluate(stage) {
    const lower = stage.summary('lower-facial-third');
    const middle = stage.summary('middle-facial-third');
    if (lower === null || middle === null) return [];
    const percent = lowerToMiddleThirdPercent({ lowerMm: lower.median, middleMm: middle.median });
    const usual = usualOf(stage, 'lower-to-middle-third');
    const limit = `usually ${rangeText(usual.range, '% of the middle third')}`;
    const said = `Lower third ${String(lower.median)} mm is ${percent.toFixed(1)} % of the middle third ${String(middle.median)} mm`;
    const common = {
      value: percent,
      unit: 'percent',
      limit,
      measurement: 'lower-to-middle-third',
      source: usual.source,
    };
    return isWithin(usual.range, percent)
      ? [passes({ ...common, reason: `${said}; ${limit}.` })]
      : [cautions({ ...common, reason: `${said}; ${limit}. Compare with rest distance and speech.` })];
  },
};

const swallowCrossCheck: CheckRule = {
  code: 'swallow-cross-check',
  version: 1,
  name: 'Swallowing against occlusal vertical dimension',
  milestones: VISITS,
  source: fromMemory('textbook cross-check'),
  cautionText: 'A cross-check, never the deciding value.',
  evaluate(stage) {
    const swallow = stage.summary('swallow-vertical-dimension');
    const occlusal = stage.summary('occlusal-vertical-dimension');
    if (swallow === null || occlusal === null) return [];
    const difference = tidy(differenceOfSummaries('Swallowing and occlusal vertical dimension', swallow, occlusal));
    const allowed = stage.limit('swallow-difference-mm');
    const limit = `within ${String(allowed.value)} mm`;
    const said = `Swallowing gives ${String(difference)} mm against the occlusal vertical dimension`;
    const common = {
      value: difference,
      unit: 'mm',
      limit,
      measurement: 'swallow-vertical-dimension',
      source: allowed.source,
    };
    return Math.abs(difference) <= allowed.value
      ? [passes({ ...common, reason: `${said}: ${limit}.` })]
      : [cautions({ ...common, reason: `${said}; expected ${limit}. Measure both again.`, action: 'repeat' })];
  },
};

export const VERTICAL_RULES: readonly CheckRule[] = [
  repeatedReadings,
  restDistance,
  changeOfDimension,
  keptDimension,
  facialThirds,
  swallowCrossCheck,
];
