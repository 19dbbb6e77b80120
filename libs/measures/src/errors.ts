import { DomainError } from '@archwright/kernel';
import type { NumberMeasurement } from './measurement.js';
import { rangeText } from './standing.js';

/** A measurement, class or grade was asked for by a code that the catalogue does not have. */
export class UnknownMeasurementError extends DomainError {
  constructor(code: string, nearby: readonly string[]) {
    const hint = nearby.length > 0 ? ` Did you mean ${nearby.join(', ')}?` : ' Choose a code of the catalogue.';
    super('measures.unknown-code', `There is no measurement "${code}".${hint}`, { code, nearby });
  }
}

/** The value is of the wrong kind: no finite number, no whole count, not one of the answers. */
export class InvalidValueError extends DomainError {
  constructor(
    reason: 'not-finite' | 'not-whole' | 'not-an-option' | 'not-a-boolean',
    code: string,
    value: unknown,
    accepted: string,
  ) {
    super(`measures.${reason}`, `${code}: "${String(value)}" is not accepted. Accepted: ${accepted}.`, {
      code,
      value: String(value),
      accepted,
    });
  }
}

/** The unit is not the catalogue's. */
export class WrongUnitError extends DomainError {
  constructor(code: string, unit: string, expected: string) {
    super(
      'measures.wrong-unit',
      `${code} is recorded in ${expected}, not in "${unit}". Convert the value and enter it in ${expected}.`,
      {
        code,
        unit,
        expected,
      },
    );
  }
}

/** A value that a body cannot have. Ask again; when ten times the value would do, centimetres are suspected. */
export class ImplausibleValueError extends DomainError {
  constructor(
    measurement: NumberMeasurement,
    value: number,
    readonly suspectedMm: number | null,
  ) {
    const ask =
      suspectedMm === null
        ? 'Measure again.'
        : `Was it read in centimetres? Then it is ${String(suspectedMm)} mm: measure again or enter it in mm.`;
    super(
      'measures.implausible',
      `${measurement.name}: ${String(value)} ${measurement.unit} is outside what is possible (${rangeText(measurement.plausible, measurement.unit)}). ${ask}`,
      { code: measurement.code, value, unit: measurement.unit, plausible: measurement.plausible, suspectedMm },
    );
  }
}

/** A computed value was typed in. */
export class DerivedValueError extends DomainError {
  constructor(code: string, inputs: string) {
    super('measures.derived-not-typed', `${code} is computed from ${inputs} and never typed in. Enter those instead.`, {
      code,
      inputs,
    });
  }
}

/** Arch, side, region or method is missing or not one of the choices. */
export class QualifierError extends DomainError {
  constructor(code: string, qualifier: string, given: string | undefined, accepted: readonly string[]) {
    super(
      'measures.qualifier',
      `${code}: ${qualifier} ${given === undefined ? 'is missing' : `"${given}" is not a choice`}. Accepted: ${accepted.length > 0 ? accepted.join(', ') : 'none'}.`,
      { code, qualifier, given: given ?? null, accepted },
    );
  }
}

/** Two values with different landmarks or methods were to be compared. */
export class DifferentMethodError extends DomainError {
  constructor(what: string, key: string, first: string, second: string) {
    super(
      'measures.different-landmarks',
      `${what} cannot be compared: ${key} is "${first}" for one and "${second}" for the other. Measure both with the same ${key}.`,
      { key, first, second },
    );
  }
}

/** Nothing to summarise or too few values. */
export class TooFewReadingsError extends DomainError {
  constructor(what: string, given: number, needed: number) {
    super('measures.too-few-readings', `${what}: ${String(given)} given, at least ${String(needed)} needed.`, {
      given,
      needed,
    });
  }
}

/** A practice's overlay asks for something it may not change. */
export class OverlayError extends DomainError {
  constructor(code: string, reason: string) {
    super('measures.overlay', `The practice's setting for "${code}" is refused: ${reason}.`, { code, reason });
  }
}

/** A score, grade or class cannot be computed from what was given. */
export class ScoringError extends DomainError {
  constructor(reason: string, message: string, details: Readonly<Record<string, unknown>> = {}) {
    super(`measures.${reason}`, message, details);
  }
}

/** A tooth number or area that the notation does not have. */
export class ToothCodeError extends DomainError {
  constructor(code: string, accepted: string) {
    super('measures.tooth-code', `"${code}" is no tooth or area of this notation. Accepted: ${accepted}.`, {
      code,
      accepted,
    });
  }
}
