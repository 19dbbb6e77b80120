import { measurementByCode } from '../catalogue/catalogue.js';
import { DerivedValueError } from '../errors.js';
import type { Arch, Measurement, MilestoneKind, NumberMeasurement, Sex, Side } from '../measurement.js';
import { checkValue, type Reading, type ReadingValue } from '../readings/reading.js';
import { summariseReadings, type ReadingSummary } from '../readings/summary.js';
import { asymmetryMm, interocclusalRestDistanceMm, lowerToMiddleThirdPercent } from '../vertical/derived.js';
import { evaluateStage, judgeAlone } from './evaluate-stage.js';
import type { PracticeOverlay } from './settings.js';
import type { Verdict } from './verdict.js';

export interface ExplainOptions {
  readonly unit?: string;
  readonly arch?: Arch;
  readonly side?: Side;
  readonly region?: string;
  readonly method?: Readonly<Record<string, string>>;
  readonly milestone?: MilestoneKind;
  /** Chooses between published ranges of women and of men. */
  readonly sex?: Sex;
  readonly overlay?: PracticeOverlay | null;
}

export interface Explanation {
  readonly measurement: Measurement;
  readonly values: readonly ReadingValue[];
  /** Null for answers, and for a computed value. */
  readonly summary: ReadingSummary | null;
  readonly verdicts: readonly Verdict[];
  /** Qualifiers that were not stated and were assumed for this explanation, such as `arch upper`. */
  readonly assumed: readonly string[];
}

/** The parts of a computed value, in the order in which they are given. */
const PARTS: Readonly<
  Record<string, { readonly codes: readonly [string, string]; readonly compute: (a: number, b: number) => number }>
> = {
  'interocclusal-rest-distance': {
    codes: ['vertical-dimension-at-rest', 'occlusal-vertical-dimension'],
    compute: (restMm, occlusalMm) => interocclusalRestDistanceMm({ restMm, occlusalMm }),
  },
  'change-of-occlusal-vertical-dimension': {
    codes: ['occlusal-vertical-dimension', 'old-denture-occlusal-vertical-dimension'],
    compute: (now, old) => interocclusalRestDistanceMm({ restMm: now, occlusalMm: old }),
  },
  'lower-to-middle-third': {
    codes: ['lower-facial-third', 'middle-facial-third'],
    compute: (lowerMm, middleMm) => lowerToMiddleThirdPercent({ lowerMm, middleMm }),
  },
  'canine-line-asymmetry': {
    codes: ['canine-line-distance', 'canine-line-distance'],
    compute: (rightMm, leftMm) => asymmetryMm({ rightMm, leftMm }),
  },
};

/**
 * Explains a value, repeated readings, or a computed value, without keeping anything.
 *
 * @param texts one or several readings as typed; for a computed value its two parts (rest then occlusal, new then old,
 *   lower then middle, right then left) or, to ask what the rule says, the value itself
 * @throws {DomainError} as {@link checkValue}; {@link DerivedValueError} for a computed value that cannot be asked so
 */
export function explainMeasurement(code: string, texts: readonly string[], options: ExplainOptions = {}): Explanation {
  const measurement = measurementByCode(code);
  if (measurement.derived === true) return explainDerived(measurement, texts, options);
  const values = texts.map((text) => checkValue(code, parse(measurement, text), options.unit));
  const { reading, assumed } = qualified(measurement, options);
  const readings = values.map((value): Reading => ({ ...reading, value }));
  const isNumber = measurement.kind === 'number' || measurement.kind === 'count';
  const verdicts = evaluateStage({
    readings,
    facts: {
      milestones: options.milestone === undefined ? measurement.capturedAt : [options.milestone],
      arches: reading.arch === undefined ? ['upper', 'lower'] : [reading.arch],
      ...(options.sex === undefined ? {} : { person: { sex: options.sex } }),
    },
    overlay: options.overlay ?? null,
  }).filter((verdict) => verdict.measurement === measurement.code);
  return {
    measurement,
    values,
    summary: isNumber ? summariseReadings(measurement.name, readings) : null,
    verdicts,
    assumed,
  };
}

function explainDerived(measurement: Measurement, texts: readonly string[], options: ExplainOptions): Explanation {
  const parts = PARTS[measurement.code];
  const [first, second] = texts;
  if (parts === undefined || first === undefined || texts.length > 2) {
    throw new DerivedValueError(
      measurement.code,
      parts === undefined ? 'its parts' : `${parts.codes.join(' and ')} (two values)`,
    );
  }
  const numeric = measurement as NumberMeasurement;
  const value =
    second === undefined
      ? Number(checkValue(measurement.code, parse(measurement, first), options.unit))
      : parts.compute(
          Number(checkValue(parts.codes[0], parse(measurement, first), options.unit)),
          Number(checkValue(parts.codes[1], parse(measurement, second), options.unit)),
        );
  return {
    measurement,
    values: [value],
    summary: null,
    verdicts: judgeAlone(numeric, value, options.overlay ?? null),
    assumed: [],
  };
}

function parse(measurement: Measurement, text: string): ReadingValue {
  const typed = text.trim();
  if (measurement.kind === 'enum') return typed;
  if (measurement.kind === 'boolean')
    return typed === 'true' || typed === 'yes' ? true : typed === 'false' || typed === 'no' ? false : typed;
  return toNumber(typed) ?? typed;
}

const NUMBER = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/;

/** A decimal comma is taken for what it is. */
const toNumber = (text: string): number | null => (NUMBER.test(text) ? Number(text.replace(',', '.')) : null);

function qualified(
  measurement: Measurement,
  options: ExplainOptions,
): { reading: Omit<Reading, 'value'>; assumed: readonly string[] } {
  const assumed: string[] = [];
  const assume = <T extends string>(name: string, given: T | undefined, choices: readonly T[]): T | undefined => {
    if (given !== undefined || choices.length === 0) return given;
    const [choice] = choices;
    assumed.push(`${name} ${choice ?? ''}`);
    return choice;
  };
  const arch = assume('arch', options.arch, measurement.perArch === true ? (['upper', 'lower'] as const) : []);
  const side = assume('side', options.side, measurement.perSide === true ? (['right', 'left'] as const) : []);
  const region = assume('region', options.region, measurement.regions ?? []);
  const method: Record<string, string> = { ...options.method };
  for (const key of measurement.method) {
    const choice = key.required ? assume(key.key, method[key.key], key.options) : method[key.key];
    if (choice !== undefined) method[key.key] = choice;
  }
  return {
    reading: {
      code: measurement.code,
      ...(arch === undefined ? {} : { arch }),
      ...(side === undefined ? {} : { side }),
      ...(region === undefined ? {} : { region }),
      method,
    },
    assumed,
  };
}
