import type { ChainStage, StagePart } from './case-chain.js';
import type { Arch, ChairMinutes, PathVisit } from './path-schema.js';
import { singleArchMinutes } from './scale.js';

const BOTH = ['upper', 'lower'] as const;

/** The stage that serves the given visits, with the minutes, captures and cautions of all of them. */
export function stageOf(
  { code, parts }: { readonly code: string; readonly parts: readonly StagePart[] },
  position: number,
  chained: boolean,
): ChainStage {
  const visits = distinctVisits(parts);
  const arches = BOTH.filter((arch) => parts.some((part) => part.arch === arch));
  const union = <Value>(of: (visit: PathVisit) => readonly Value[]): Value[] => [...new Set(visits.flatMap(of))];
  return {
    code,
    position,
    arches,
    parts,
    chained,
    title: union((visit) => [visit.title]).join('; '),
    milestones: union((visit) => [visit.milestone]),
    chairMinutes: minutesOf(parts),
    skills: union((visit) => visit.skills),
    kits: union((visit) => visit.kits),
    assistant: visits.some((visit) => visit.assistant),
    mayTravel: visits.every((visit) => visit.mayTravel),
    captures: capturesOf(parts),
    checklist: byCode(visits.flatMap((visit) => visit.checklist)),
    cautions: union((visit) => visit.cautions),
    isDelivery: visits.some((visit) => visit.isDelivery),
    isReview: visits.every((visit) => visit.isReview),
    pointOfNoReturn: visits.find((visit) => visit.pointOfNoReturn !== null)?.pointOfNoReturn ?? null,
  };
}

/** Two arches on one path have the visit twice, once for each arch: it is one visit. */
function distinctVisits(parts: readonly StagePart[]): PathVisit[] {
  return [...new Map(parts.map((part) => [`${part.path} ${part.visit.code}`, part.visit])).values()];
}

/**
 * Minutes of a stage. One path: the both-arches figure, or one arch's share. Two paths: the longer both-arches figure of the
 * visits that shrink with the arch, plus work that concerns one arch anyway (factor 1).
 */
function minutesOf(parts: readonly StagePart[]): ChainStage['chairMinutes'] {
  const shrinking = parts.filter((part) => part.visit.chairMinutes.singleArchFactor < 1);
  const own = distinctVisits(parts).filter((visit) => visit.chairMinutes.singleArchFactor === 1);
  const figure = (of: (minutes: ChairMinutes) => number): number => {
    const both = shrinking.map((part) => of(part.visit.chairMinutes));
    const single = shrinking.map((part) =>
      singleArchMinutes(of(part.visit.chairMinutes), part.visit.chairMinutes.singleArchFactor),
    );
    const shared = Math.max(0, ...(shrinking.length > 1 ? both : single));
    return own.reduce((sum, visit) => sum + of(visit.chairMinutes), shared);
  };
  return {
    min: figure((minutes) => minutes.min),
    typical: figure((minutes) => minutes.typical),
    max: figure((minutes) => minutes.max),
  };
}

function capturesOf(parts: readonly StagePart[]): ChainStage['captures'] {
  const merged = new Map<string, { code: string; perArch: boolean; required: boolean; arches: Arch[] }>();
  for (const { arch, visit } of parts) {
    for (const capture of visit.captures) {
      const known = merged.get(capture.code);
      merged.set(capture.code, {
        code: capture.code,
        perArch: capture.perArch || known?.perArch === true,
        required: capture.required || known?.required === true,
        arches: [...(known?.arches ?? []), arch],
      });
    }
  }
  return [...merged.values()];
}

const byCode = <Line extends { readonly code: string }>(lines: readonly Line[]): Line[] => [
  ...new Map(lines.map((line) => [line.code, line])).values(),
];
