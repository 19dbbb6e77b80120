import type { CaseChain, ChainLabStep, ChainPhase } from './case-chain.js';
import { UnknownPartError } from './errors.js';
import type { Arch, GateRequirement, LabPhase, PathLabStep, StepSegment, TreatmentPath } from './path-schema.js';
import { singleArchMinutes } from './scale.js';
import { stageOf } from './combined-stage.js';
import { mergeVisits, type VisitGroup } from './merge-visits.js';

/** One path with the arches that follow it, and the names its parts take in the chain. */
interface Strand {
  readonly path: TreatmentPath;
  readonly arches: readonly Arch[];
  readonly without: ReadonlyMap<Arch, ReadonlySet<string>>;
  /** Appended to lab steps, phases, lags, gates, loops and objects when the two arches follow different paths. */
  readonly suffix: string;
}

/**
 * The chain of a case: both arches' paths joined at their shared stages. Two arches on one path share every stage and lab step,
 * with the minutes of both arches. On different paths shared stages are merged (captures of both; the longer of the two
 * both-arches figures, plus work that concerns one arch anyway), other stages stand between them, and lab work is each arch's
 * own, except where both paths ask for the very same steps between the same stages: then it is made together. A first check joins only where both dentures are placed together.
 *
 * @throws {ArchesNotCombinableError} when shared stages come in different orders or a path does not allow the arch
 * @throws {UnknownPartError} when no path is given
 */
export function combineArches(given: { readonly upper?: TreatmentPath; readonly lower?: TreatmentPath }): CaseChain {
  const strands = strandsOf(given);
  const groups = mergeVisits(strands);
  const stageCodes = new Map<string, string>();
  for (const group of groups) {
    for (const part of group.parts) stageCodes.set(`${part.arch} ${part.visit.code}`, group.code);
  }
  const stages = groups.map((group, position) => stageOf(group, position, isChained(groups, group)));
  const joint = jointPhases(strands, stageCodes);
  const perStrand = strands.map((strand, index) => partsOf(strand, stageCodes, joint, index === 0));
  return {
    paths: strands.flatMap(({ path, arches }) =>
      arches.map((arch) => ({ arch, code: path.code, version: path.version })),
    ),
    stages,
    phases: perStrand.flatMap((each) => each.phases),
    steps: perStrand.flatMap((each) => each.steps),
    lags: perStrand.flatMap((each) => each.lags),
    gates: perStrand.flatMap((each) => each.gates),
    loops: perStrand.flatMap((each) => each.loops),
    objects: perStrand.flatMap((each) => each.objects),
  };
}

function strandsOf({ upper, lower }: { upper?: TreatmentPath; lower?: TreatmentPath }): Strand[] {
  const without = new Map<Arch, ReadonlySet<string>>();
  if (upper !== undefined && lower !== undefined) {
    if (upper.code === lower.code && upper.version === lower.version) {
      // One path: only rounds of healing may differ, so the longer list holds every visit of both.
      const path = upper.visits.length >= lower.visits.length ? upper : lower;
      for (const [arch, own] of [
        ['upper', upper],
        ['lower', lower],
      ] as const) {
        const codes = new Set(own.visits.map((visit) => visit.code));
        without.set(arch, new Set(path.visits.flatMap((visit) => (codes.has(visit.code) ? [] : [visit.code]))));
      }
      return [{ path, arches: ['upper', 'lower'], without, suffix: '' }];
    }
    return [
      { path: upper, arches: ['upper'], without, suffix: '-upper' },
      { path: lower, arches: ['lower'], without, suffix: '-lower' },
    ];
  }
  if (upper !== undefined) return [{ path: upper, arches: ['upper'], without, suffix: '' }];
  if (lower !== undefined) return [{ path: lower, arches: ['lower'], without, suffix: '' }];
  throw new UnknownPartError('path', 'none', ['upper', 'lower']);
}

/** After a denture that is not the case's last only its first check is chained: the patient comes again for the other arch anyway. */
function isChained(groups: readonly VisitGroup[], group: VisitGroup): boolean {
  const last = groups.findLastIndex((each) => each.parts.some((part) => part.visit.isDelivery));
  return group.parts.some(({ arch, visit }) => {
    if (!visit.chained) return false;
    const delivery = groups.findIndex((each) => each.parts.some((part) => part.arch === arch && part.visit.isDelivery));
    return !visit.isReview || delivery === last || visit.joins === 'first-check';
  });
}

/** Codes of phases that both paths have alike, step for step, between the same stages. */
function jointPhases(strands: readonly Strand[], stageCodes: ReadonlyMap<string, string>): ReadonlySet<string> {
  const [first, second] = strands;
  if (first === undefined || second === undefined) return new Set();
  const shape = ({ path, arches }: Strand, code: string): string | null => {
    const phase = path.labPhases.find((each) => each.code === code);
    if (phase === undefined) return null;
    const stage = (visit: string) => stageCodes.get(`${arches.join()} ${visit}`) ?? visit;
    const steps = phase.steps.map((step) => ({
      ...step,
      after: step.after.map((each) => ({ ...each, code: stage(each.code) })),
    }));
    return JSON.stringify({ ...phase, after: stage(phase.after), before: stage(phase.before), steps });
  };
  return new Set(
    first.path.labPhases.flatMap(({ code }) => (shape(first, code) === shape(second, code) ? [code] : [])),
  );
}

type Parts = Pick<CaseChain, 'phases' | 'steps' | 'lags' | 'gates' | 'loops' | 'objects'>;

function partsOf(
  { path, arches, suffix }: Strand,
  stageCodes: ReadonlyMap<string, string>,
  joint: ReadonlySet<string>,
  ownsJoint: boolean,
): Parts {
  const arch = arches[0] ?? 'upper';
  const stepCodes = new Map(
    path.labPhases.flatMap((phase) =>
      phase.steps.map((step) => [step.code, joint.has(phase.code) ? step.code : `${step.code}${suffix}`] as const),
    ),
  );
  const partCode = (code: string): string => stageCodes.get(`${arch} ${code}`) ?? stepCodes.get(code) ?? code;
  const own = (code: string): string => `${code}${suffix}`;
  const made = path.labPhases.filter((phase) => ownsJoint || !joint.has(phase.code));
  const madeFor = (phase: LabPhase): readonly Arch[] => (joint.has(phase.code) ? ['upper', 'lower'] : arches);
  const phaseCode = (phase: LabPhase): string => (joint.has(phase.code) ? phase.code : own(phase.code));
  const phases = made.map((phase): ChainPhase => ({
    code: phaseCode(phase),
    arches,
    afterStage: partCode(phase.after),
    beforeStage: partCode(phase.before),
    outward: phase.outward,
    turnaround: phase.turnaround,
    steps: phase.steps.map((step) => partCode(step.code)),
  }));
  const steps = made.flatMap((phase) =>
    phase.steps.map((step): ChainLabStep => ({
      code: partCode(step.code),
      title: step.title,
      phase: phaseCode(phase),
      arches: madeFor(phase),
      afterStage: partCode(phase.after),
      beforeStage: partCode(phase.before),
      workCentre: step.workCentre,
      segments: segmentsFor(step, madeFor(phase)),
      batch: step.batch,
      after: step.after.map((before) => ({
        ...before,
        code: partCode(before.code),
        lag: before.lag === null || joint.has(phase.code) ? before.lag : own(before.lag),
      })),
      pointOfNoReturn: step.pointOfNoReturn,
      source: step,
    })),
  );
  return {
    phases,
    steps,
    lags: path.lags.map((lag) => ({
      ...lag,
      code: own(lag.code),
      arches,
      from: partCode(lag.from),
      to: partCode(lag.to),
    })),
    gates: path.gates.map((gate) => ({
      ...gate,
      code: own(gate.code),
      arches,
      before: { ...gate.before, code: partCode(gate.before.code) },
      requires: gate.requires.map((requirement) => ({
        ...requirementAt(requirement, partCode, own),
        title: requirementTitle(path, requirement),
      })),
    })),
    loops: path.loops.map((loop) => ({
      ...loop,
      code: own(loop.code),
      arches,
      foundAt: loop.foundAt.map(partCode),
      remedy: loop.remedy.kind === 'return' ? { ...loop.remedy, to: partCode(loop.remedy.to) } : loop.remedy,
      otherwise: loop.otherwise === null ? null : own(loop.otherwise),
      discards: loop.discards.map(own),
    })),
    objects: path.objects.map((object) => ({
      ...object,
      code: own(object.code),
      arches,
      madeAt: partCode(object.madeAt),
    })),
  };
}

/** Segments of a step in minutes for the given arches; machines and setting take as long for one arch as for both. */
export function segmentsFor(step: PathLabStep, arches: readonly Arch[]): StepSegment[] {
  if (arches.length === 2) return step.segments;
  return step.segments.map((segment) =>
    segment.kind === 'hands-on'
      ? { ...segment, minutes: singleArchMinutes(segment.minutes, step.singleArchFactor) }
      : segment,
  );
}

function requirementAt(
  requirement: GateRequirement,
  partCode: (code: string) => string,
  own: (code: string) => string,
): GateRequirement {
  if (requirement.kind === 'case-record') return requirement;
  if (requirement.kind === 'in-the-clinic') return { ...requirement, object: own(requirement.object) };
  return { ...requirement, at: partCode(requirement.at) };
}

/** The missing thing in words, for the list a clinician reads. */
function requirementTitle(path: TreatmentPath, requirement: GateRequirement): string {
  const words = (code: string): string => code.replaceAll('-', ' ');
  switch (requirement.kind) {
    case 'capture':
      return `${words(requirement.code)} recorded`;
    case 'checklist': {
      const lines = path.visits.find((each) => each.code === requirement.at)?.checklist ?? [];
      return lines.find((line) => line.code === requirement.code)?.text ?? words(requirement.code);
    }
    case 'equal-counts':
      return `${words(requirement.codes[0])} equal to ${words(requirement.codes[1])}`;
    case 'no-failed-check':
      return 'No failed check left open';
    case 'stage-passed':
      return `${path.visits.find((each) => each.code === requirement.at)?.title ?? requirement.at} passed`;
    case 'case-record':
      return `${words(requirement.record)} dated`;
    case 'disinfection':
      return 'Disinfection recorded: agent and time';
    case 'in-the-clinic':
      return `${path.objects.find((each) => each.code === requirement.object)?.title ?? requirement.object} in the clinic`;
  }
}
