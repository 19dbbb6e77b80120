import { DomainError } from '@archwright/kernel';
import type { StageGate } from './stage-gates.js';

/** Something may not happen yet; `details.missing` lists exactly what is missing. */
export class GateOpenError extends DomainError {
  constructor(what: string, missing: readonly string[], gates: readonly Pick<StageGate, 'gate'>[]) {
    super('casework.gate-conflict', `${what} while this is missing: ${missing.join('; ')}.`, {
      missing,
      gates: gates.map(({ gate }) => gate.code),
    });
  }
}
