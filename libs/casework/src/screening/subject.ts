import { measurementByCode, valueInWords, type NumberMeasurement, type Unit } from '@archwright/measures';
import type { Measurement } from '@archwright/records';

/** What values are about that may be compared: one measurement of one place, taken in one way. */
export type Subject = Pick<Measurement, 'code' | 'arch' | 'side' | 'region' | 'method'>;

/** The same for the same subject, whatever the order in which the method was stated. */
export function subjectKey({ code, arch, side, region, method }: Subject): string {
  const how = Object.entries(method ?? {})
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([key, answer]) => `${key}=${answer}`);
  return [code, arch, side, region, ...how].filter((part) => part !== null).join('/');
}

/** Such as `Arch width (upper)`. */
export function subjectInWords({ code, arch, side, region }: Subject): string {
  const place = [arch, side, region].filter((part) => part !== null);
  const { name } = measurementByCode(code);
  return place.length === 0 ? name : `${name} (${place.join(', ')})`;
}

/** @throws {UnknownMeasurementError} for a code that is not in the catalogue */
export function numberMeasurement(code: string): NumberMeasurement {
  const measurement = measurementByCode(code);
  if (measurement.kind === 'number' || measurement.kind === 'count') return measurement;
  throw new Error(`${code} is kept as a number, but the catalogue says ${measurement.kind}.`);
}

/** A value with its unit, such as `65.5 mm`. */
export const amount = (value: number, unit: Unit): string => valueInWords({ value, unit }) ?? '';

/** Smallest step in which a value of a unit is read. Project default: half a millimetre and half a degree by eye. */
const RESOLUTION: Readonly<Record<Unit, number>> = { mm: 0.5, deg: 0.5, percent: 1, points: 1, count: 1 };

export const resolutionOf = ({ unit, resolution }: NumberMeasurement): number => resolution ?? RESOLUTION[unit];
