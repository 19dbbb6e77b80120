import { cautions } from './cautions.js';
import { PathInvalidError, type PathFault, type PathPartKind, type PathProblem } from './errors.js';
import {
  treatmentPath,
  type GateRequirement,
  type LabPhase,
  type PathGate,
  type PathLabStep,
  type PathLag,
  type TimeSpan,
  type TreatmentPath,
} from './path-schema.js';
import { findLagContradiction } from './lag-consistency.js';
import { cycleIn } from './phase-order.js';

type Report = (
  rule: PathProblem['rule'],
  at: PathProblem['at'],
  fault: PathFault,
  values: PathProblem['values'],
  message: string,
) => void;

/**
 * Reads a path from data and checks it.
 *
 * @throws {PathInvalidError} listing every fault by part
 */
export function parsePath(data: unknown): TreatmentPath {
  const parsed = treatmentPath.safeParse(data);
  if (!parsed.success) {
    const problems = parsed.error.issues.map((issue): PathProblem => ({
      rule: 'schema',
      part: issue.path.map(String).join('.') || 'path',
      message: issue.message,
      at: { kind: 'path', code: '', field: issue.path.map(String).join('.') },
      fault: 'schema',
      values: {},
    }));
    throw new PathInvalidError('unread', problems);
  }
  const problems = checkPath(parsed.data);
  if (problems.length > 0) throw new PathInvalidError(parsed.data.code, problems);
  return parsed.data;
}

/**
 * Checks the graph of a path: codes unique and known, no cycle, every gate measurable at or before what it guards, minima not
 * above maxima, loops return to something earlier and discard what has been made, delivery exists and the lags can be met.
 *
 * @returns every fault found, empty for a sound path
 */
export function checkPath(path: TreatmentPath): PathProblem[] {
  const problems: PathProblem[] = [];
  const report: Report = (rule, at, fault, values, message) =>
    problems.push({ rule, part: named(at), message, at, fault, values });
  checkCodes(path, report);
  checkVisits(path, report);
  checkPhases(path, report);
  checkLags(path, report);
  for (const gate of path.gates) checkGate(path, gate, report);
  checkLoops(path, report);
  if (problems.length === 0) {
    const contradiction = findLagContradiction(path);
    if (contradiction !== null) {
      const at = { ...contradiction, field: '' };
      report('delivery-unreachable', at, 'unreachable', {}, 'minimum waits exceed the maximum around it');
    }
  }
  return problems;
}

/** A part as it is called in a message; what is wrong with the path as a whole is said of its visits. */
function named({ kind, code, field }: PathProblem['at']): string {
  return kind === 'path' ? field : `${kind} ${code}`;
}

function checkCodes(path: TreatmentPath, report: Report): void {
  const unique = (parts: readonly { readonly kind: PathPartKind; readonly code: string }[]) => {
    parts.forEach(({ kind, code }, index) => {
      if (parts.findIndex((each) => each.code === code) === index) return;
      report('unique-code', { kind, code, field: 'code' }, 'twice', { code }, 'occurs more than once');
    });
  };
  const of = (kind: PathPartKind, parts: readonly { readonly code: string }[]) =>
    parts.map(({ code }) => ({ kind, code }));
  unique([...of('visit', path.visits), ...of('step', stepsOf(path))]);
  unique(of('phase', path.labPhases));
  unique(of('lag', path.lags));
  unique(of('gate', path.gates));
  unique(of('loop', path.loops));
  unique(of('object', path.objects));
}

function checkVisits(path: TreatmentPath, report: Report): void {
  const known = new Set(cautions.map((each) => each.code));
  for (const visit of path.visits) {
    const at = (field: string) => ({ kind: 'visit' as const, code: visit.code, field });
    const { min, typical, max } = visit.chairMinutes;
    if (min > typical || typical > max) {
      const said = `minutes ${String(min)}/${String(typical)}/${String(max)} do not rise`;
      report('minutes-order', at('chairMinutes'), 'minutes', { min, typical, max }, said);
    }
    for (const caution of visit.cautions) {
      if (known.has(caution)) continue;
      report('unknown-caution', at('cautions'), 'caution-unknown', { caution }, `caution "${caution}" has no text`);
    }
  }
  const n = path.visits.filter((each) => each.isDelivery).length;
  if (n !== 1) {
    const said = `${String(n)} visits place the denture, exactly one must`;
    report('delivery-missing', { kind: 'path', code: '', field: 'visits' }, 'deliveries', { n }, said);
  }
}

function checkPhases(path: TreatmentPath, report: Report): void {
  for (const phase of path.labPhases) {
    const at = (field: string) => ({ kind: 'phase' as const, code: phase.code, field });
    const { after, before } = phase;
    const from = visitIndex(path, after);
    const to = visitIndex(path, before);
    if (from < 0 || to < 0) {
      const said = `stands between "${after}" and "${before}", one is no visit`;
      report('unknown-part', at('before'), 'phase-ends-unknown', { after, before }, said);
    } else if (from >= to) {
      const said = `must come back to a visit later than "${after}"`;
      report('lag-direction', at('before'), 'phase-backwards', { after }, said);
    }
    for (const step of phase.steps) checkStep(phase, step, report);
    const cycle = cycleIn(phase)?.join(', ');
    if (cycle !== undefined) {
      report('cycle', at('steps'), 'circle', { steps: cycle }, `steps wait for each other: ${cycle}`);
    }
  }
}

function checkStep(phase: LabPhase, step: PathLabStep, report: Report): void {
  const codes = new Set(phase.steps.map((each) => each.code));
  step.after.forEach(({ code, min, max }, index) => {
    const at = { kind: 'step' as const, code: step.code, field: `after.${String(index)}` };
    if (!codes.has(code) && code !== phase.after) {
      const said = `follows "${code}", which is neither in its phase nor the visit before`;
      report('unknown-part', at, 'follows-unknown', { code }, said);
    }
    checkOrder({ ...at, field: `${at.field}.limits` }, min, max, report);
  });
}

function checkLags(path: TreatmentPath, report: Report): void {
  for (const lag of path.lags) {
    const at = (field: string) => ({ kind: 'lag' as const, code: lag.code, field });
    const ends = { from: lag.from, to: lag.to };
    const from = partPosition(path, lag.from);
    const to = partPosition(path, lag.to);
    if (from === null || to === null) {
      const said = `runs from "${lag.from}" to "${lag.to}", one is unknown`;
      report('unknown-part', at('to'), 'wait-ends-unknown', ends, said);
    } else if (!endsItsPhase(path, lag)) {
      const said = 'from a lab step it must end at the visit that needs the work';
      report('lag-direction', at('to'), 'wait-leaves-phase', ends, said);
    } else if (from >= to) {
      report('lag-direction', at('to'), 'wait-backwards', ends, `"${lag.to}" does not come after "${lag.from}"`);
    }
    checkOrder(at('limits'), lag.min, lag.max, report);
  }
}

function endsItsPhase(path: TreatmentPath, { from, to }: PathLag): boolean {
  const phase = path.labPhases.find((each) => each.steps.some((step) => step.code === from));
  return phase === undefined || phase.before === to;
}

function checkOrder(at: PathProblem['at'], min: TimeSpan | null, max: TimeSpan | null, report: Report): void {
  if (min === null || max === null || min.unit !== max.unit || min.amount <= max.amount) return;
  const said = `minimum ${String(min.amount)} is above maximum ${String(max.amount)} ${max.unit}`;
  report('lag-order', at, 'limits', { min: min.amount, max: max.amount }, said);
}

function checkGate(path: TreatmentPath, gate: PathGate, report: Report): void {
  const at = (field: string) => ({ kind: 'gate' as const, code: gate.code, field });
  const { code } = gate.before;
  const guarded = partPosition(path, code);
  if (guarded === null) {
    report('unknown-part', at('before'), 'guards-unknown', { code }, `guards "${code}", which the path does not have`);
    return;
  }
  // A prescription is signed at the end of its visit, so what that visit captures counts.
  const latest = gate.before.kind === 'prescription' ? guarded : guarded - 0.01;
  gate.requires.forEach((requirement, index) => {
    const missing = unmeasurable(path, requirement, latest);
    if (missing === null) return;
    report('gate-not-measurable', at(`requires.${String(index)}`), missing.fault, missing.values, missing.message);
  });
}

type Missing = Pick<PathProblem, 'fault' | 'values' | 'message'>;

function unmeasurable(path: TreatmentPath, requirement: GateRequirement, latest: number): Missing | null {
  if (requirement.kind === 'case-record') return null;
  if (requirement.kind === 'in-the-clinic') return notThere(path, requirement.object, latest);
  const asked = requirement.at;
  const visit = path.visits.find((each) => each.code === asked);
  const at = partPosition(path, asked);
  const values = { at: asked };
  if (visit === undefined || at === null) {
    return { fault: 'asks-unknown', values, message: `asks at "${asked}", which is no visit` };
  }
  if (at > latest) return { fault: 'asks-later', values, message: `asks at "${asked}", later than what it guards` };
  if (requirement.kind === 'capture' && !visit.captures.some((each) => each.code === requirement.code)) {
    const { code } = requirement;
    return {
      fault: 'asks-uncaptured',
      values: { code, at: asked },
      message: `"${code}" is not captured at "${asked}"`,
    };
  }
  const absent = linesOf(requirement).find((code) => !visit.checklist.some((each) => each.code === code));
  if (absent === undefined) return null;
  const message = `checklist line "${absent}" is not on the list of "${asked}"`;
  return { fault: 'asks-unlisted', values: { line: absent, at: asked }, message };
}

function notThere(path: TreatmentPath, object: string, latest: number): Missing | null {
  const made = path.objects.find((each) => each.code === object);
  if (made === undefined) {
    return { fault: 'object-unknown', values: { object }, message: `object "${object}" is not made by this path` };
  }
  if ((madePosition(path, made.madeAt) ?? Infinity) <= latest) return null;
  return { fault: 'object-late', values: { object }, message: `"${object}" is made too late` };
}

function linesOf(requirement: GateRequirement): readonly string[] {
  if (requirement.kind === 'checklist') return [requirement.code];
  return requirement.kind === 'equal-counts' ? requirement.codes : [];
}

function checkLoops(path: TreatmentPath, report: Report): void {
  for (const loop of path.loops) {
    const at = (field: string) => ({ kind: 'loop' as const, code: loop.code, field });
    const found = loop.foundAt.map((code) => madePosition(path, code));
    if (found.includes(null)) {
      const codes = loop.foundAt.join(', ');
      const said = `is found at ${codes}, not all of it exists`;
      report('unknown-part', at('foundAt'), 'found-unknown', { codes }, said);
    }
    const latest = Math.max(...found.map((each) => each ?? -1));
    if (loop.remedy.kind === 'return') {
      const { to } = loop.remedy;
      const back = partPosition(path, to);
      if (back === null || back > latest) {
        report(
          'loop-return',
          at('remedy'),
          'returns-later',
          { to },
          `returns to "${to}", which is not an earlier part`,
        );
      }
    }
    if (loop.otherwise !== null && !path.loops.some((each) => each.code === loop.otherwise)) {
      const said = `continues with loop "${loop.otherwise}", which does not exist`;
      report('loop-return', at('otherwise'), 'continues-unknown', { loop: loop.otherwise }, said);
    }
    for (const code of loop.discards) {
      const object = path.objects.find((each) => each.code === code);
      const madeAt = object === undefined ? null : madePosition(path, object.madeAt);
      if (madeAt !== null && madeAt <= latest) continue;
      const said = `discards "${code}", which is not made by then`;
      report('loop-discard', at('discards'), 'discards-unmade', { object: code }, said);
    }
  }
}

const stepsOf = (path: TreatmentPath) => path.labPhases.flatMap((phase) => phase.steps);
const visitIndex = (path: TreatmentPath, code: string): number => path.visits.findIndex((each) => each.code === code);

/** Visits stand at 0, 1, 2 …; the steps of a phase between the visit before it and the next one. Null: no such part. */
function partPosition(path: TreatmentPath, code: string): number | null {
  const visit = visitIndex(path, code);
  if (visit >= 0) return visit;
  const phase = path.labPhases.find((each) => each.steps.some((step) => step.code === code));
  return phase === undefined ? null : visitIndex(path, phase.after) + 0.5;
}

const madePosition = (path: TreatmentPath, code: string): number | null =>
  code === 'before-case' ? -1 : partPosition(path, code);
