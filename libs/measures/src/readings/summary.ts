import { DifferentMethodError, TooFewReadingsError } from '../errors.js';
import type { Reading } from './reading.js';

type Method = Readonly<Record<string, string>>;

/** Repeated readings of one distance, reduced to what the checks use. */
export interface ReadingSummary {
  readonly median: number;
  /** Largest minus smallest. */
  readonly spread: number;
  readonly count: number;
  readonly method: Method;
}

/** Sums and differences of tenths of a millimetre, free of binary dust, so that 66.1 - 62.1 is not above 4. */
export function tidy(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

/** @throws {TooFewReadingsError} for an empty list */
export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  if (upper === undefined || lower === undefined) throw new TooFewReadingsError('Median', 0, 1);
  return tidy((lower + upper) / 2);
}

/**
 * Refuses a comparison of values measured differently. A key that only one side states does not count against it,
 * except the landmarks: they must be stated by both or by neither.
 *
 * @throws {DifferentMethodError}
 */
export function requireSameMethod(what: string, first: Method, second: Method, keys?: readonly string[]): void {
  const compared = keys ?? [...new Set([...Object.keys(first), ...Object.keys(second)])];
  for (const key of compared) {
    const a = first[key];
    const b = second[key];
    if (a === b) continue;
    if (key !== 'landmarks' && (a === undefined || b === undefined)) continue;
    throw new DifferentMethodError(what, key, a ?? 'not stated', b ?? 'not stated');
  }
}

/**
 * Median and spread of repeated readings of one thing.
 *
 * @throws {DifferentMethodError} when they were not measured alike; {@link TooFewReadingsError} for none
 */
export function summariseReadings(what: string, readings: readonly Reading[]): ReadingSummary {
  const [first, ...others] = readings;
  if (first === undefined) throw new TooFewReadingsError(what, 0, 1);
  let method = first.method ?? {};
  for (const other of others) {
    requireSameMethod(what, method, other.method ?? {});
    method = { ...other.method, ...method };
  }
  const values = readings.map((reading) => Number(reading.value));
  return {
    median: medianOf(values),
    spread: tidy(Math.max(...values) - Math.min(...values)),
    count: values.length,
    method,
  };
}
