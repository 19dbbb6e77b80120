import type { LabPhase, PathGate, PathLoop, TreatmentPath } from '@archwright/protocol';

/** Puts a visit at another place in the order; what hangs on it by its code goes with it. */
export function withVisitAt(path: TreatmentPath, code: string, place: number): TreatmentPath {
  const moved = path.visits.find((visit) => visit.code === code);
  if (moved === undefined) return path;
  const others = path.visits.filter((visit) => visit !== moved);
  const at = Math.min(Math.max(place, 0), others.length);
  return { ...path, visits: [...others.slice(0, at), moved, ...others.slice(at)] };
}

/**
 * Adds a visit like another after it. It is one of this arch alone and delivers nothing: both would be said of two visits
 * else, and a path refuses that.
 */
export function withAnotherLike(path: TreatmentPath, code: string): { path: TreatmentPath; code: string } {
  const place = path.visits.findIndex((visit) => visit.code === code);
  const like = path.visits[place];
  if (like === undefined) return { path, code };
  const fresh = freeCode(path, code);
  const added = { ...like, code: fresh, joins: null, isDelivery: false, pointOfNoReturn: null };
  const visits = [...path.visits.slice(0, place + 1), added, ...path.visits.slice(place + 1)];
  return { path: { ...path, visits }, code: fresh };
}

function freeCode({ visits }: TreatmentPath, code: string): string {
  for (const letter of 'abcdefghijklmnopqrstuvwxyz') {
    if (visits.every((visit) => visit.code !== `${code}${letter}`)) return `${code}${letter}`;
  }
  return `${code}z`;
}

/**
 * Takes a visit out with all that hangs on it: the laboratory work before and after it, its waits and gates, and what
 * loops find there. Whatever else needs it is named as a fault.
 */
export function withoutVisit(path: TreatmentPath, code: string): TreatmentPath {
  const cut = ({ after, before }: LabPhase): boolean => after === code || before === code;
  const gone = new Set([code, ...path.labPhases.filter(cut).flatMap(({ steps }) => steps.map((step) => step.code))]);
  const visits = path.visits.filter((visit) => visit.code !== code);
  return withoutParts({ ...path, visits, labPhases: path.labPhases.filter((phase) => !cut(phase)) }, gone);
}

/** Takes out the waits, gates and objects of visits and steps that are gone, and what loops find there. */
export function withoutParts(path: TreatmentPath, gone: ReadonlySet<string>): TreatmentPath {
  return {
    ...path,
    lags: path.lags.filter(({ from, to }) => !gone.has(from) && !gone.has(to)),
    gates: path.gates.flatMap((gate) => gateWithout(gate, gone)),
    loops: path.loops.flatMap((loop) => loopWithout(loop, gone)),
    objects: path.objects.filter(({ madeAt }) => !gone.has(madeAt)),
  };
}

function gateWithout(gate: PathGate, gone: ReadonlySet<string>): PathGate[] {
  const requires = gate.requires.filter((each) => !('at' in each && gone.has(each.at)));
  return gone.has(gate.before.code) || requires.length === 0 ? [] : [{ ...gate, requires }];
}

function loopWithout(loop: PathLoop, gone: ReadonlySet<string>): PathLoop[] {
  const foundAt = loop.foundAt.filter((each) => !gone.has(each));
  return foundAt.length === 0 ? [] : [{ ...loop, foundAt }];
}
