import { measurementByCode } from '../catalogue/catalogue.js';
import type { EnumMeasurement, BooleanMeasurement, NumberMeasurement } from '../measurement.js';
import { medianOf } from '../readings/summary.js';
import type { Reading } from '../readings/reading.js';
import { isWithin, projectDefault, rangeText } from '../standing.js';
import { cautions, passes, type CheckRule, type Outcome } from './rule.js';
import type { Stage } from './stage.js';

/** Findings that a rule of their own judges; the usual range would only say it twice. */
const JUDGED_ELSEWHERE = new Set([
  'sibilant-test',
  'tray-fit',
  'impression-result',
  'impression-tries',
  'base-stability',
  'base-rocking',
  'frenum-relief',
  'parallel-closure',
  're-seat-check',
  'rim-or-base-contact',
  'pain-on-closing',
  'border-extension',
  'tracing-risk-explained',
  'centric-relation-agreement',
  'patient-acceptance',
  'occlusion',
  'newton-stomatitis',
  'tissue-state',
  'occlusal-plane-to-ala-tragus-line',
  'anterior-plane-to-interpupillary-line',
]);

interface Group {
  readonly reading: Reading;
  readonly values: number[];
}

const subject = (reading: Reading): string =>
  JSON.stringify([
    reading.code,
    reading.arch,
    reading.side,
    reading.region,
    Object.entries(reading.method ?? {}).sort(),
  ]);

export function judgeNumber(
  stage: Stage,
  measurement: NumberMeasurement,
  reading: Reading,
  value: number,
): Outcome | null {
  const usual = stage.settings.usual(measurement, stage.person, reading.region);
  if (usual === null) return null;
  const limit = `usually ${rangeText(usual.range, measurement.unit)}`;
  const common = {
    ...placeOf(reading),
    value,
    unit: measurement.unit,
    limit,
    source: usual.source,
    cautionText: measurement.caution,
  };
  const said = `${measurement.name}${placeText(reading)} ${String(value)} ${measurement.unit}`;
  if (isWithin(usual.range, value)) return passes({ ...common, reason: `${said}: ${limit}.` });
  // No speaking space at all is contact, which the speech rule judges.
  if (reading.code === 'closest-speaking-space' && value === 0) return null;
  return cautions({
    ...common,
    reason: `${said}: ${value < usual.range.min ? 'below' : 'above'} what is usual (${rangeText(usual.range, measurement.unit)}). Is it meant?`,
    action: 'go-on',
  });
}

function judgeAnswer(measurement: EnumMeasurement | BooleanMeasurement, reading: Reading): Outcome | null {
  const said = `${measurement.name}${placeText(reading)}`;
  const common = {
    ...placeOf(reading),
    value: reading.value,
    source: measurement.source,
    cautionText: measurement.caution,
  };
  if (measurement.kind === 'boolean') {
    if (measurement.usualAnswer === null) return null;
    const outcome = {
      ...common,
      limit: `usually ${measurement.usualAnswer ? 'yes' : 'no'}`,
      reason: `${said}: ${reading.value === true ? 'yes' : 'no'}.`,
    };
    return reading.value === measurement.usualAnswer ? passes(outcome) : cautions({ ...outcome, action: 'go-on' });
  }
  if (measurement.usualOptions === null) return null;
  const label = measurement.options.find((option) => option.code === reading.value)?.label ?? String(reading.value);
  const outcome = {
    ...common,
    limit: `usually ${measurement.usualOptions.join(' or ')}`,
    reason: `${said}: ${label}.`,
  };
  return measurement.usualOptions.includes(String(reading.value))
    ? passes(outcome)
    : cautions({ ...outcome, action: 'go-on' });
}

const placeOf = ({ code, arch, side, region }: Reading): Pick<Outcome, 'measurement' | 'arch' | 'side' | 'region'> => ({
  measurement: code,
  ...(arch === undefined ? {} : { arch }),
  ...(side === undefined ? {} : { side }),
  ...(region === undefined ? {} : { region }),
});

const placeText = ({ arch, side, region }: Reading): string => {
  const parts = [arch, side, region].filter((part) => part !== undefined);
  return parts.length === 0 ? '' : ` (${parts.join(', ')})`;
};

/** Every captured value against its usual range: a caution and nothing more. */
export const usualRange: CheckRule = {
  code: 'usual-range',
  version: 1,
  name: 'Usual range',
  milestones: ['examination', 'final-impression', 'jaw-relation', 'trial', 'placement', 'review'],
  source: projectDefault('the catalogue; each verdict names the source of its range'),
  cautionText: 'Unusual is not wrong.',
  evaluate(stage) {
    const groups = new Map<string, Group>();
    for (const reading of stage.readings) {
      if (JUDGED_ELSEWHERE.has(reading.code)) continue;
      const known = groups.get(subject(reading));
      const values = [...(known?.values ?? []), Number(reading.value)];
      groups.set(subject(reading), { reading, values });
    }
    return [...groups.values()].flatMap(({ reading, values }) => {
      const measurement = measurementByCode(reading.code);
      const outcome =
        measurement.kind === 'enum' || measurement.kind === 'boolean'
          ? judgeAnswer(measurement, reading)
          : judgeNumber(stage, measurement, reading, medianOf(values));
      return outcome === null ? [] : [outcome];
    });
  },
};
