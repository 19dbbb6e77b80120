import { cautions } from './cautions.js';
import { PathInvalidError, type PathProblem } from './errors.js';
import {
  treatmentPath,
  type GateRequirement,
  type PathGate,
  type PathLag,
  type TimeSpan,
  type TreatmentPath,
} from './path-schema.js';
import { findLagContradiction } from './lag-consistency.js';
import { cycleIn } from './phase-order.js';

type Report = (rule: PathProblem['rule'], part: string, message: string) => void;

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
  const report: Report = (rule, part, message) => problems.push({ rule, part, message });
  checkCodes(path, report);
  checkVisits(path, report);
  checkPhases(path, report);
  checkLags(path, report);
  for (const gate of path.gates) checkGate(path, gate, report);
  checkLoops(path, report);
  if (problems.length === 0) {
    const contradiction = findLagContradiction(path);
    if (contradiction !== null)
      report('delivery-unreachable', contradiction, 'minimum waits exceed the maximum around it');
  }
  return problems;
}

function checkCodes(path: TreatmentPath, report: Report): void {
  const unique = (kind: string, codes: readonly string[]) => {
    codes.forEach((code, index) => {
      if (codes.indexOf(code) !== index) report('unique-code', `${kind} ${code}`, 'occurs more than once');
    });
  };
  unique(
    'part',
    [...path.visits, ...stepsOf(path)].map((each) => each.code),
  );
  unique(
    'phase',
    path.labPhases.map((each) => each.code),
  );
  unique(
    'lag',
    path.lags.map((each) => each.code),
  );
  unique(
    'gate',
    path.gates.map((each) => each.code),
  );
  unique(
    'loop',
    path.loops.map((each) => each.code),
  );
  unique(
    'object',
    path.objects.map((each) => each.code),
  );
}

function checkVisits(path: TreatmentPath, report: Report): void {
  const known = new Set(cautions.map((each) => each.code));
  for (const visit of path.visits) {
    const { min, typical, max } = visit.chairMinutes;
    if (min > typical || typical > max) {
      report(
        'minutes-order',
        `visit ${visit.code}`,
        `minutes ${String(min)}/${String(typical)}/${String(max)} do not rise`,
      );
    }
    for (const code of visit.cautions) {
      if (!known.has(code)) report('unknown-caution', `visit ${visit.code}`, `caution "${code}" has no text`);
    }
  }
  const deliveries = path.visits.filter((each) => each.isDelivery);
  if (deliveries.length !== 1) {
    report('delivery-missing', 'visits', `${String(deliveries.length)} visits place the denture, exactly one must`);
  }
}

function checkPhases(path: TreatmentPath, report: Report): void {
  for (const phase of path.labPhases) {
    const part = `phase ${phase.code}`;
    const from = visitIndex(path, phase.after);
    const to = visitIndex(path, phase.before);
    if (from < 0 || to < 0)
      report('unknown-part', part, `stands between "${phase.after}" and "${phase.before}", one is no visit`);
    else if (from >= to) report('lag-direction', part, `must come back to a visit later than "${phase.after}"`);
    const codes = new Set(phase.steps.map((each) => each.code));
    for (const step of phase.steps) {
      for (const before of step.after) {
        if (!codes.has(before.code) && before.code !== phase.after) {
          report(
            'unknown-part',
            `step ${step.code}`,
            `follows "${before.code}", which is neither in its phase nor the visit before`,
          );
        }
        checkOrder(`step ${step.code}`, before.min, before.max, report);
      }
    }
    const cycle = cycleIn(phase);
    if (cycle !== null) report('cycle', part, `steps wait for each other: ${cycle.join(', ')}`);
  }
}

function checkLags(path: TreatmentPath, report: Report): void {
  for (const lag of path.lags) {
    const part = `lag ${lag.code}`;
    const from = partPosition(path, lag.from);
    const to = partPosition(path, lag.to);
    if (from === null || to === null)
      report('unknown-part', part, `runs from "${lag.from}" to "${lag.to}", one is unknown`);
    else if (!endsItsPhase(path, lag))
      report('lag-direction', part, 'from a lab step it must end at the visit that needs the work');
    else if (from >= to) report('lag-direction', part, `"${lag.to}" does not come after "${lag.from}"`);
    checkOrder(part, lag.min, lag.max, report);
  }
}

function endsItsPhase(path: TreatmentPath, { from, to }: PathLag): boolean {
  const phase = path.labPhases.find((each) => each.steps.some((step) => step.code === from));
  return phase === undefined || phase.before === to;
}

function checkOrder(part: string, min: TimeSpan | null, max: TimeSpan | null, report: Report): void {
  if (min === null || max === null || min.unit !== max.unit || min.amount <= max.amount) return;
  report('lag-order', part, `minimum ${String(min.amount)} is above maximum ${String(max.amount)} ${max.unit}`);
}

function checkGate(path: TreatmentPath, gate: PathGate, report: Report): void {
  const part = `gate ${gate.code}`;
  const guarded = partPosition(path, gate.before.code);
  if (guarded === null) {
    report('unknown-part', part, `guards "${gate.before.code}", which the path does not have`);
    return;
  }
  // A prescription is signed at the end of its visit, so what that visit captures counts.
  const latest = gate.before.kind === 'prescription' ? guarded : guarded - 0.01;
  for (const requirement of gate.requires) {
    const missing = unmeasurable(path, requirement, latest);
    if (missing !== null) report('gate-not-measurable', part, missing);
  }
}

function unmeasurable(path: TreatmentPath, requirement: GateRequirement, latest: number): string | null {
  if (requirement.kind === 'case-record') return null;
  if (requirement.kind === 'in-the-clinic') {
    const object = path.objects.find((each) => each.code === requirement.object);
    if (object === undefined) return `object "${requirement.object}" is not made by this path`;
    return (madePosition(path, object.madeAt) ?? Infinity) <= latest
      ? null
      : `"${requirement.object}" is made too late`;
  }
  const visit = path.visits.find((each) => each.code === requirement.at);
  const at = partPosition(path, requirement.at);
  if (visit === undefined || at === null) return `asks at "${requirement.at}", which is no visit`;
  if (at > latest) return `asks at "${requirement.at}", later than what it guards`;
  if (requirement.kind === 'capture' && !visit.captures.some((each) => each.code === requirement.code)) {
    return `"${requirement.code}" is not captured at "${visit.code}"`;
  }
  const lines =
    requirement.kind === 'checklist'
      ? [requirement.code]
      : requirement.kind === 'equal-counts'
        ? requirement.codes
        : [];
  const absent = lines.find((code) => !visit.checklist.some((each) => each.code === code));
  return absent === undefined ? null : `checklist line "${absent}" is not on the list of "${visit.code}"`;
}

function checkLoops(path: TreatmentPath, report: Report): void {
  for (const loop of path.loops) {
    const part = `loop ${loop.code}`;
    const found = loop.foundAt.map((code) => madePosition(path, code));
    if (found.includes(null))
      report('unknown-part', part, `is found at ${loop.foundAt.join(', ')}, not all of it exists`);
    const latest = Math.max(...found.map((each) => each ?? -1));
    if (loop.remedy.kind === 'return') {
      const to = partPosition(path, loop.remedy.to);
      if (to === null || to > latest)
        report('loop-return', part, `returns to "${loop.remedy.to}", which is not an earlier part`);
    }
    if (loop.otherwise !== null && !path.loops.some((each) => each.code === loop.otherwise)) {
      report('loop-return', part, `continues with loop "${loop.otherwise}", which does not exist`);
    }
    for (const code of loop.discards) {
      const object = path.objects.find((each) => each.code === code);
      const madeAt = object === undefined ? null : madePosition(path, object.madeAt);
      if (madeAt === null || madeAt > latest)
        report('loop-discard', part, `discards "${code}", which is not made by then`);
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
