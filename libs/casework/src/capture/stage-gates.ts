import type { GateView } from '@archwright/contracts';
import { openGates, type CaseChain, type GateEvidence } from '@archwright/protocol';
import { FindingPause, GateOverride, UserAccount } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { StageRecord } from './stage-record.js';

type Gate = CaseChain['gates'][number];

/** Code of the gate that a late finding closes until it is answered. */
export const LATE_FINDING = 'late-finding';
const FAILED_CHECKS = 'failed-checks';

/** One gate of a stage and exactly what it lacks. */
export interface StageGate {
  readonly gate: Gate;
  readonly missing: readonly string[];
  /** The part of it that the visit itself does not bring: it has to be there before the visit begins. */
  readonly missingBeforehand: readonly string[];
  /** Only the record of disinfection is missing, which is made when the work is handed over. */
  readonly closesAtHandOver: boolean;
}

/** The gates in front of a stage and of the work order made after it. */
export function stageGates(chain: CaseChain, code: string, evidence: GateEvidence): StageGate[] {
  const gates = [...chain.gates.filter((gate) => isAt(gate, code)), ...failedChecksGate(chain, code)];
  return gates.map((gate) => ({
    gate,
    missing: missingAt(chain, gate, evidence),
    missingBeforehand: missingAt(chain, { ...gate, requires: gate.requires.filter(isBeforehand(code)) }, evidence),
    closesAtHandOver: gate.requires.every(({ kind }) => kind === 'disinfection'),
  }));
}

const missingAt = (chain: CaseChain, gate: Gate, evidence: GateEvidence): string[] =>
  openGates({ ...chain, gates: [gate] }, gate.before, evidence).flatMap((open) => open.missing);

/** What is recorded, checked or disinfected at the visit itself can't be asked for before it begins. */
const isBeforehand =
  (code: string) =>
  (requirement: Gate['requires'][number]): boolean =>
    !('at' in requirement) || requirement.at !== code || requirement.kind === 'stage-passed';

const isAt = ({ before }: Gate, code: string): boolean => before.kind !== 'lab-step' && before.code === code;

/** A failed check always stops its stage; a path that says so itself needs no second gate for it. */
function failedChecksGate(chain: CaseChain, code: string): Gate[] {
  const asked = chain.gates.some(
    (gate) => isAt(gate, code) && gate.requires.some((each) => each.kind === 'no-failed-check' && each.at === code),
  );
  if (asked) return [];
  const title = 'No failed check left open';
  return [
    {
      code: FAILED_CHECKS,
      title,
      arches: chain.stages.find((stage) => stage.code === code)?.arches ?? [],
      before: { kind: 'prescription', code },
      requires: [{ kind: 'no-failed-check', at: code, title }],
      firmness: 'hard',
      overridable: true,
      standing: 'project-default',
      source: 'a failed check stops its stage until it is corrected or overridden in writing',
    },
  ];
}

/** What is still missing before the stage may be passed; what the hand-over itself brings is not. */
export const missingToPass = (gates: readonly StageGate[]): string[] =>
  gates.filter(({ closesAtHandOver }) => !closesAtHandOver).flatMap(({ missing }) => missing);

/** The gates as a clinician sees them: with who set one aside, and with a late finding that waits for an answer. */
export async function viewGates(
  tx: EntityManager,
  { stage }: StageRecord,
  gates: readonly StageGate[],
): Promise<GateView[]> {
  const overrides = await tx.findBy(GateOverride, { stageId: stage.id });
  const [pause] = await tx.find(FindingPause, {
    where: { stageId: stage.id, state: In(['open', 'go-on']) },
    order: { createdAt: 'DESC' },
    take: 1,
  });
  const ids = [...overrides.map(({ overriddenBy }) => overriddenBy), pause?.answeredBy ?? []].flat();
  const people = await tx.findBy(UserAccount, { id: In(ids) });
  const nameOf = (userId: string | null | undefined) => people.find(({ id }) => id === userId)?.name ?? null;
  return [
    ...gates.map(({ gate, missing, closesAtHandOver }) => ({
      code: gate.code,
      title: gate.title,
      hard: gate.firmness === 'hard',
      open: missing.length > 0,
      missing: [...missing],
      overridable: gate.overridable,
      closesAtHandOver,
      overriddenBy: nameOf(overrides.find((each) => each.gate === gate.code)?.overriddenBy),
    })),
    ...(pause === undefined
      ? []
      : [
          {
            code: LATE_FINDING,
            title: `A finding after this visit pauses "${pause.pointOfNoReturn}" until it is answered`,
            hard: true,
            open: pause.state === 'open',
            missing: pause.state === 'open' ? [pause.reason] : [],
            overridable: true,
            closesAtHandOver: false,
            overriddenBy: nameOf(pause.answeredBy),
          },
        ]),
  ];
}
