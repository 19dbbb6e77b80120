import { measurementByCode } from '../catalogue/catalogue.js';
import {
  DerivedValueError,
  ImplausibleValueError,
  InvalidValueError,
  QualifierError,
  WrongUnitError,
} from '../errors.js';
import type { Arch, Measurement, NumberMeasurement, Side } from '../measurement.js';
import { isWithin } from '../standing.js';

export type ReadingValue = number | string | boolean;

/** One value as captured: what, of which arch, side or region, and by which method. */
export interface Reading {
  readonly code: string;
  readonly value: ReadingValue;
  /** When stated it must be the catalogue's unit. */
  readonly unit?: string;
  readonly arch?: Arch;
  readonly side?: Side;
  readonly region?: string;
  /** Answers to the measurement's method keys, such as `landmarks`. */
  readonly method?: Readonly<Record<string, string>>;
}

/**
 * Checks a value alone: kind, unit and the plausible range.
 *
 * @param unit when stated, must be the catalogue's unit; centimetres are named, not converted
 * @throws {UnknownMeasurementError} {@link InvalidValueError} {@link WrongUnitError} {@link ImplausibleValueError}
 */
export function checkValue(code: string, value: unknown, unit?: string): ReadingValue {
  const measurement = measurementByCode(code);
  switch (measurement.kind) {
    case 'boolean':
      if (typeof value !== 'boolean')
        throw new InvalidValueError('not-a-boolean', measurement.code, value, 'true or false');
      return value;
    case 'enum': {
      const accepted = measurement.options.map((option) => option.code);
      if (typeof value !== 'string' || !accepted.includes(value)) {
        throw new InvalidValueError('not-an-option', measurement.code, value, accepted.join(', '));
      }
      return value;
    }
    default:
      return checkNumber(measurement, value, unit);
  }
}

function checkNumber(measurement: NumberMeasurement, value: unknown, unit: string | undefined): number {
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    throw new InvalidValueError('not-finite', measurement.code, value, `a number in ${measurement.unit}`);
  }
  if (unit !== undefined && unit !== measurement.unit)
    throw new WrongUnitError(measurement.code, unit, measurement.unit);
  if (measurement.kind === 'count' && !Number.isInteger(value)) {
    throw new InvalidValueError('not-whole', measurement.code, value, 'a whole number');
  }
  if (!isWithin(measurement.plausible, value)) {
    const tenfold = Math.round(value * 1e7) / 1e6;
    const isCentimetre = measurement.unit === 'mm' && value !== 0 && isWithin(measurement.plausible, tenfold);
    throw new ImplausibleValueError(measurement, value, isCentimetre ? tenfold : null);
  }
  return value;
}

/**
 * Checks a reading before it is kept: the value, that it is not a computed one, and that arch, side, region and method
 * are stated where they are needed and are among the choices. Returned with the catalogue's code and unit.
 *
 * @throws {DerivedValueError} for a computed value; {@link QualifierError} for a missing or unknown qualifier;
 *   otherwise as {@link checkValue}
 */
export function checkReading(reading: Reading): Reading {
  const measurement = measurementByCode(reading.code);
  if (measurement.derived === true)
    throw new DerivedValueError(measurement.code, measurement.name.toLowerCase() + "'s parts");
  const value = checkValue(reading.code, reading.value, reading.unit);
  requireChoice(measurement, 'arch', reading.arch, measurement.perArch === true ? ['upper', 'lower'] : null);
  requireChoice(measurement, 'side', reading.side, measurement.perSide === true ? ['right', 'left'] : null);
  requireChoice(measurement, 'region', reading.region, measurement.regions ?? null);
  for (const key of measurement.method) {
    const stated = reading.method?.[key.key];
    if (stated === undefined ? key.required : !key.options.includes(stated)) {
      throw new QualifierError(measurement.code, key.key, stated, key.options);
    }
  }
  const known = measurement.method.map((key) => key.key);
  for (const key of Object.keys(reading.method ?? {})) {
    if (!known.includes(key)) throw new QualifierError(measurement.code, 'method', key, known);
  }
  const isNumber = measurement.kind === 'number' || measurement.kind === 'count';
  return { ...reading, code: measurement.code, value, ...(isNumber ? { unit: measurement.unit } : {}) };
}

function requireChoice(
  measurement: Measurement,
  qualifier: string,
  given: string | undefined,
  choices: readonly string[] | null,
): void {
  const isWrong = choices === null ? given !== undefined : given === undefined || !choices.includes(given);
  if (isWrong) throw new QualifierError(measurement.code, qualifier, given, choices ?? []);
}
