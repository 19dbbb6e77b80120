import type { LabPhase, PathLabStep, TreatmentPath } from '@archwright/protocol';
import { freshCode, OWN, type Added } from './path-change.js';
import { withoutParts } from './path-shape.js';

/** What a new step is called and which bench does it, until somebody says otherwise. */
export interface StepStart {
  readonly title: string;
  readonly workCentre: string;
}

/**
 * Adds a laboratory step right after a visit or another step: what followed follows the new one, with its waits. After a
 * visit without laboratory work it begins such work, for the next visit.
 *
 * @returns null after the last visit, where nothing waits for work
 */
export function withStepAfter(path: TreatmentPath, code: string, start: StepStart): Added | null {
  const phase = phaseAround(path, code);
  return phase === undefined ? withPhaseAfter(path, code, start) : withStepIn(path, phase, code, start);
}

function withStepIn(path: TreatmentPath, phase: LabPhase, code: string, start: StepStart): Added {
  const step = newStep(path, code, start);
  const at = phase.steps.findIndex((each) => each.code === code) + 1;
  const follows = phase.steps.map((each) => ({
    ...each,
    after: each.after.map((before) => (before.code === code ? { ...before, code: step.code } : before)),
  }));
  const steps = [...follows.slice(0, at), step, ...follows.slice(at)];
  const labPhases = path.labPhases.map((each) => (each === phase ? { ...phase, steps } : each));
  return { path: { ...path, labPhases }, code: step.code };
}

function withPhaseAfter(path: TreatmentPath, code: string, start: StepStart): Added | null {
  const next = path.visits[path.visits.findIndex((visit) => visit.code === code) + 1];
  if (next === undefined || next.code === path.visits[0]?.code) return null;
  const step = newStep(path, code, start);
  const phase: LabPhase = {
    code: freshCode(path.labPhases, 'own-work'),
    after: code,
    before: next.code,
    outward: 'courier',
    turnaround: { usualMinDays: 1, usualMaxDays: 2, rushDays: 1, ...OWN },
    steps: [step],
  };
  const order = (each: LabPhase): number => path.visits.findIndex((visit) => visit.code === each.after);
  const labPhases = [...path.labPhases, phase].sort((one, other) => order(one) - order(other));
  return { path: { ...path, labPhases }, code: step.code };
}

function newStep(path: TreatmentPath, after: string, { title, workCentre }: StepStart): PathLabStep {
  const steps = path.labPhases.flatMap((phase) => phase.steps);
  return {
    code: freshCode([...steps, ...path.visits], 'own-step'),
    title,
    workCentre: steps.find((step) => step.code === after)?.workCentre ?? workCentre,
    segments: [{ kind: 'hands-on', minutes: 30, holdsPlace: true }],
    singleArchFactor: 1,
    batch: null,
    after: [{ code: after, lag: null, min: null, max: null }],
    pointOfNoReturn: null,
    ...OWN,
  };
}

/**
 * Takes a laboratory step out: what followed it follows what stood before it, and with the last step its stretch of work
 * goes. Its waits, gates and objects go as well; whatever else needs it is named as a fault.
 */
export function withoutStep(path: TreatmentPath, code: string): TreatmentPath {
  const labPhases = path.labPhases.flatMap((phase) => {
    const gone = phase.steps.find((step) => step.code === code);
    if (gone === undefined) return [phase];
    const steps = phase.steps.filter((step) => step !== gone).map((step) => bridged(step, gone));
    return steps.length === 0 ? [] : [{ ...phase, steps }];
  });
  return withoutParts({ ...path, labPhases }, new Set([code]));
}

function bridged(step: PathLabStep, gone: PathLabStep): PathLabStep {
  if (step.after.every(({ code }) => code !== gone.code)) return step;
  const kept = step.after.filter(({ code }) => code !== gone.code);
  const known = new Set(kept.map(({ code }) => code));
  return { ...step, after: [...kept, ...gone.after.filter(({ code }) => !known.has(code))] };
}

/** Takes a stretch of laboratory work out with all its steps. */
export function withoutPhase(path: TreatmentPath, code: string): TreatmentPath {
  const gone = path.labPhases.find((phase) => phase.code === code)?.steps ?? [];
  const labPhases = path.labPhases.filter((phase) => phase.code !== code);
  return withoutParts({ ...path, labPhases }, new Set(gone.map((step) => step.code)));
}

/** The stretch of work that a step is part of, or that begins after a visit. */
export const phaseAround = ({ labPhases }: TreatmentPath, code: string): LabPhase | undefined =>
  labPhases.find(({ after, steps }) => after === code || steps.some((step) => step.code === code));

/** Steps that follow a step, each with the place of the arrow among its own. */
export function followers({ steps }: LabPhase, code: string): { step: PathLabStep; index: number }[] {
  return steps.flatMap((step) =>
    step.after.flatMap((before, index) => (before.code === code ? [{ step, index }] : [])),
  );
}
