import type { CaseChain, ChainGate, GateRequirementOfStage } from './case-chain.js';
import type { Arch, CaseRecord } from './path-schema.js';

/** What is known about a case when a gate is looked at. Stages are codes of the chain, of the round that counts. */
export interface GateEvidence {
  /** `arch` is null for a value of the whole mouth. */
  readonly captures: readonly { readonly stage: string; readonly code: string; readonly arch: Arch | null }[];
  /** Lines done; `count` where a number was asked for. */
  readonly checklist: readonly { readonly stage: string; readonly code: string; readonly count: number | null }[];
  /** Failed checks without a later passed one. */
  readonly failedChecks: readonly { readonly stage: string; readonly reason: string }[];
  readonly passedStages: readonly string[];
  readonly caseRecords: readonly CaseRecord[];
  /** Stages whose dispatch carries a disinfection record. */
  readonly disinfectedStages: readonly string[];
  readonly objectsInClinic: readonly string[];
  /** Gates a clinician has closed in writing. */
  readonly overriddenGates: readonly string[];
}

/** What may not happen yet: a stage, a lab step, or signing the prescription made after a stage. */
export type Guarded = ChainGate['before'];

export interface OpenGate {
  readonly gate: ChainGate;
  /** Exactly what is missing, one line each, in words. */
  readonly missing: readonly string[];
}

/** The gates in front of `guarded` that are still open, with exactly what is missing. */
export function openGates(chain: CaseChain, guarded: Guarded, evidence: GateEvidence): OpenGate[] {
  return chain.gates
    .filter((gate) => gate.before.kind === guarded.kind && gate.before.code === guarded.code)
    .filter((gate) => !(gate.overridable && evidence.overriddenGates.includes(gate.code)))
    .map((gate) => ({ gate, missing: gate.requires.flatMap((each) => missingOf(chain, gate, each, evidence)) }))
    .filter((open) => open.missing.length > 0);
}

function missingOf(
  chain: CaseChain,
  gate: ChainGate,
  requirement: GateRequirementOfStage,
  evidence: GateEvidence,
): string[] {
  const unless = (isMet: boolean): string[] => (isMet ? [] : [requirement.title]);
  const line = (stage: string, code: string) =>
    evidence.checklist.find((each) => each.stage === stage && each.code === code);
  switch (requirement.kind) {
    case 'capture':
      return missingCaptures(chain, gate, requirement, evidence);
    case 'checklist':
      return unless(line(requirement.at, requirement.code) !== undefined);
    case 'equal-counts': {
      const [first, second] = requirement.codes.map((code) => line(requirement.at, code)?.count ?? null);
      return unless(first !== null && first === second);
    }
    case 'no-failed-check':
      return evidence.failedChecks.filter((each) => each.stage === requirement.at).map((each) => each.reason);
    case 'stage-passed':
      return unless(evidence.passedStages.includes(requirement.at));
    case 'case-record':
      return unless(evidence.caseRecords.includes(requirement.record));
    case 'disinfection':
      return unless(evidence.disinfectedStages.includes(requirement.at));
    case 'in-the-clinic':
      return unless(evidence.objectsInClinic.includes(requirement.object));
  }
}

function missingCaptures(
  chain: CaseChain,
  gate: ChainGate,
  requirement: GateRequirementOfStage & { readonly kind: 'capture' },
  evidence: GateEvidence,
): string[] {
  const stage = chain.stages.find((each) => each.code === requirement.at);
  const capture = stage?.captures.find((each) => each.code === requirement.code);
  const taken = evidence.captures.filter((each) => each.stage === requirement.at && each.code === requirement.code);
  if (capture?.perArch !== true) return taken.length > 0 ? [] : [requirement.title];
  return gate.arches
    .filter((arch) => capture.arches.includes(arch) && !taken.some((each) => each.arch === arch))
    .map((arch) => `${requirement.title} (${arch})`);
}
