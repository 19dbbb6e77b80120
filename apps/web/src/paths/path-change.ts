import type {
  LabPhase,
  PathGate,
  PathLabStep,
  PathLag,
  PathLoop,
  PathObject,
  PathVisit,
  StepPredecessor,
  TimeSpan,
  TreatmentPath,
} from '@archwright/protocol';

export type Change = (path: TreatmentPath) => TreatmentPath;

/**
 * What a practice sets is the practice's: its standing says so from then on, and its old source does not stand beside a
 * value that it never gave.
 */
export const OWN = { standing: 'practice', source: 'Set by the practice' } as const;

export const withVisit =
  (code: string, change: Partial<PathVisit>): Change =>
  (path) => ({ ...path, visits: changed(path.visits, code, change) });

export function withMinutes(code: string, change: Partial<PathVisit['chairMinutes']>): Change {
  return (path) => ({
    ...path,
    visits: path.visits.map((visit) =>
      visit.code === code ? { ...visit, chairMinutes: { ...visit.chairMinutes, ...change, ...OWN } } : visit,
    ),
  });
}

export const withLag =
  (code: string, change: Partial<PathLag>): Change =>
  (path) => ({ ...path, lags: changed(path.lags, code, change) });

export const withGate =
  (code: string, change: Partial<PathGate>): Change =>
  (path) => ({ ...path, gates: changed(path.gates, code, ownUnlessTitle(change)) });

export const withLoop =
  (code: string, change: Partial<PathLoop>): Change =>
  (path) => ({ ...path, loops: changed(path.loops, code, change) });

export function withExtra(code: string, change: Partial<PathLoop['extra']>): Change {
  return (path) => ({
    ...path,
    loops: path.loops.map((loop) =>
      loop.code === code ? { ...loop, extra: { ...loop.extra, ...change, ...OWN } } : loop,
    ),
  });
}

export const withObject =
  (code: string, change: Partial<PathObject>): Change =>
  (path) => ({ ...path, objects: changed(path.objects, code, change) });

export const withPhase =
  (code: string, change: Partial<LabPhase>): Change =>
  (path) => ({ ...path, labPhases: changed(path.labPhases, code, change) });

export function withTurnaround(code: string, change: Partial<LabPhase['turnaround']>): Change {
  return (path) => ({
    ...path,
    labPhases: path.labPhases.map((phase) =>
      phase.code === code ? { ...phase, turnaround: { ...phase.turnaround, ...change, ...OWN } } : phase,
    ),
  });
}

export function withStep(code: string, change: Partial<PathLabStep>): Change {
  return (path) => ({
    ...path,
    labPhases: path.labPhases.map((phase) => ({
      ...phase,
      steps: changed(phase.steps, code, ownUnlessTitle(change)),
    })),
  });
}

/** Changes the arrow that leads into a step from one of those before it. */
export function withArrow(code: string, index: number, change: Partial<StepPredecessor>): Change {
  return (path) => {
    const step = path.labPhases.flatMap(({ steps }) => steps).find((each) => each.code === code);
    if (step === undefined) return path;
    const after = step.after.map((each, at) => (at === index ? { ...each, ...change } : each));
    return withStep(code, { after })(path);
  };
}

/** A limit in another amount, unit or firmness; a new one where there was none. */
export function ownSpan(span: TimeSpan | null, change: Partial<TimeSpan>): TimeSpan {
  return { ...(span ?? { amount: 1, unit: 'calendar-days', firmness: 'typical' }), ...change, ...OWN };
}

export const withoutLag = (path: TreatmentPath, code: string): TreatmentPath => ({
  ...path,
  lags: path.lags.filter((lag) => lag.code !== code),
});

export const withoutGate = (path: TreatmentPath, code: string): TreatmentPath => ({
  ...path,
  gates: path.gates.filter((gate) => gate.code !== code),
});

/** Takes a loop out; no other goes on with it. */
export const withoutLoop = (path: TreatmentPath, code: string): TreatmentPath => ({
  ...path,
  loops: path.loops
    .filter((loop) => loop.code !== code)
    .map((loop) => (loop.otherwise === code ? { ...loop, otherwise: null } : loop)),
});

/** Takes an object out, and out of what loops discard. A gate that waits for it is named as a fault. */
export const withoutObject = (path: TreatmentPath, code: string): TreatmentPath => ({
  ...path,
  objects: path.objects.filter((object) => object.code !== code),
  loops: path.loops.map((loop) => ({ ...loop, discards: loop.discards.filter((each) => each !== code) })),
});

/** A path with a part more, and the part's code. */
export interface Added {
  readonly path: TreatmentPath;
  readonly code: string;
}

/** Adds a gate that asks for nothing yet: what it asks for has to be chosen before the path is sound. */
export function withGateBefore(path: TreatmentPath, before: PathGate['before'], title: string): Added {
  const code = freshCode(path.gates, 'own-gate');
  const gate: PathGate = { code, title, before, requires: [], firmness: 'hard', overridable: true, ...OWN };
  return { path: { ...path, gates: [...path.gates, gate] }, code };
}

export function withLagBetween(path: TreatmentPath, [from, to]: readonly [string, string], title: string): Added {
  const code = freshCode(path.lags, 'own-wait');
  return { path: { ...path, lags: [...path.lags, { code, title, from, to, min: null, max: null }] }, code };
}

/** Adds the loop that follows when a check finds `trigger` at a part; it makes that part again. */
export function withLoopAt(
  path: TreatmentPath,
  at: string,
  { code, trigger }: Pick<PathLoop, 'code' | 'trigger'>,
): Added {
  const loop: PathLoop = {
    ...{ code, trigger, foundAt: [at], remedy: { kind: 'return', to: at }, otherwise: null, discards: [] },
    extra: { visitsMin: 1, visitsMax: 1, labWorkingDaysMin: 0, labWorkingDaysMax: 0, ...OWN },
  };
  return { path: { ...path, loops: [...path.loops, loop] }, code };
}

export function withObjectMadeAt(path: TreatmentPath, madeAt: string, title: string): Added {
  const code = freshCode(path.objects, 'own-object');
  return { path: { ...path, objects: [...path.objects, { code, title, madeAt, shared: false }] }, code };
}

/** A code that no part of the list has, `base` itself where it is free. */
export function freshCode(parts: readonly { readonly code: string }[], base: string): string {
  let code = base;
  for (let number = 2; parts.some((part) => part.code === code); number++) code = `${base}-${String(number)}`;
  return code;
}

function changed<Part extends { readonly code: string }>(
  parts: readonly Part[],
  code: string,
  change: Partial<Part>,
): Part[] {
  return parts.map((part) => (part.code === code ? { ...part, ...change } : part));
}

const ownUnlessTitle = <Part extends object>(change: Part): Part =>
  Object.keys(change).every((field) => field === 'title') ? change : { ...change, ...OWN };
