import { DomainError } from '@archwright/kernel';

/** Kinds of parts that a path is made of; `path` is what stands at its head. */
export type PathPartKind = 'path' | 'visit' | 'step' | 'phase' | 'lag' | 'gate' | 'loop' | 'object';

/** What exactly is wrong, for whoever says it in another language: with `values` it says as much as the message. */
export type PathFault =
  | 'twice'
  | 'minutes'
  | 'caution-unknown'
  | 'deliveries'
  | 'phase-ends-unknown'
  | 'phase-backwards'
  | 'follows-unknown'
  | 'limits'
  | 'circle'
  | 'wait-ends-unknown'
  | 'wait-leaves-phase'
  | 'wait-backwards'
  | 'guards-unknown'
  | 'object-unknown'
  | 'object-late'
  | 'asks-unknown'
  | 'asks-later'
  | 'asks-uncaptured'
  | 'asks-unlisted'
  | 'found-unknown'
  | 'returns-later'
  | 'continues-unknown'
  | 'discards-unmade'
  | 'unreachable'
  | 'schema';

/** One fault of a path: which rule, which part, and what would be accepted. */
export interface PathProblem {
  readonly rule:
    | 'unique-code'
    | 'unknown-part'
    | 'cycle'
    | 'gate-not-measurable'
    | 'lag-order'
    | 'lag-direction'
    | 'loop-return'
    | 'loop-discard'
    | 'minutes-order'
    | 'delivery-missing'
    | 'delivery-unreachable'
    | 'unknown-caution'
    | 'schema';
  /** The faulty part, such as `gate consent-before-impression`. */
  readonly part: string;
  readonly message: string;
  /** The same part by kind and code, and its field, such as `requires.2`. */
  readonly at: { readonly kind: PathPartKind; readonly code: string; readonly field: string };
  readonly fault: PathFault;
  readonly values: Readonly<Record<string, string | number>>;
}

/** A path that may not be published. `details.problems` lists every fault found. */
export class PathInvalidError extends DomainError {
  constructor(path: string, problems: readonly PathProblem[]) {
    const first = problems[0];
    super(
      'protocol.path-invalid',
      `Path "${path}" has ${String(problems.length)} fault(s), first: ${first ? `${first.part}: ${first.message}` : 'none named'}.`,
      { path, problems },
    );
  }
}

/** Two arches' paths whose shared stages come in different orders, or that do not allow the arch. */
export class ArchesNotCombinableError extends DomainError {
  constructor(reason: string, details: Readonly<Record<string, unknown>>) {
    super('protocol.arches-not-combinable', reason, details);
  }
}

/** A change of state that is not allowed from where the stage, the case or the object is. */
export class IllegalTransitionError extends DomainError {
  constructor(what: 'stage' | 'case' | 'object', from: string, to: string, allowed: readonly string[]) {
    super(
      'protocol.illegal-transition',
      `${what === 'object' ? 'An' : 'A'} ${what} in state "${from}" cannot become "${to}". Allowed from there: ${allowed.length > 0 ? allowed.join(', ') : 'nothing, it is final'}.`,
      { what, from, to, allowed },
    );
  }
}

/** A code that the case's chain does not hold. */
export class UnknownPartError extends DomainError {
  constructor(kind: 'stage' | 'lab step' | 'loop' | 'path', code: string, known: readonly string[]) {
    super('protocol.unknown-part', `No ${kind} "${code}" here. Known: ${known.join(', ')}.`, { kind, code, known });
  }
}

/** A loop asked for where it cannot start: not found at that part, or already past its tries. */
export class LoopNotApplicableError extends DomainError {
  constructor(loop: string, reason: string, details: Readonly<Record<string, unknown>>) {
    super('protocol.loop-not-applicable', `Loop "${loop}" does not apply: ${reason}`, { loop, ...details });
  }
}

/** No accepted laboratory can make a phase's work. */
export class NoLaboratoryError extends DomainError {
  constructor(phase: string, missing: readonly { laboratory: string; lacks: readonly string[] }[]) {
    const each = missing.map(({ laboratory, lacks }) => `"${laboratory}" lacks ${lacks.join(', ')}`);
    super(
      'protocol.no-laboratory',
      `No accepted laboratory can make the work "${phase}": ${each.length > 0 ? each.join('; ') : 'none is accepted'}. ` +
        'Accept another laboratory, or add what is missing.',
      { phase, missing },
    );
  }
}

/** Nothing is left of the case that a plan could place. */
export class NothingToPlanError extends DomainError {
  constructor() {
    super(
      'protocol.nothing-to-plan',
      'No visit of this case is left to be planned: reviews and recalls beyond the first checks are only due.',
    );
  }
}
