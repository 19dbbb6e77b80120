import { UnknownPartError } from './errors.js';
import type { Milestone, PathLag, PathVisit, TreatmentPath } from './path-schema.js';
import { chair, lag, need, tick, typical, visit } from './paths/notation.js';

const NEEDS_HEALTHY_MUCOSA: readonly Milestone[] = ['final-impression', 'impression-and-jaw-relation'];

function healingVisit(round: number): PathVisit {
  return visit({
    code: `H${String(round)}`,
    title: 'Mucosa healing: old denture relieved, conditioner placed or changed',
    milestone: 'healing',
    joins: `healing-${String(round)}`,
    chairMinutes: chair(20, 30, 45),
    captures: [need('tissue-state'), need('newton-stomatitis')].map((each) => ({ ...each, perArch: true })),
    checklist: [tick('left-out-at-night', 'Told to leave the old denture out for at least 24 h before the impression')],
    cautions: ['two-identifiers', 'monomer-and-heat', 'soft-liner-and-adhesive'],
  });
}

/**
 * The same path with rounds of mucosa healing before its first final impression: a conditioner is changed every 3–7 days
 * (common practice, no source) and worn 3 days or more before the impression (from memory).
 *
 * @param rounds how many conditioner visits, 0 leaves the path as it is
 * @throws {UnknownPartError} when the path takes no final impression
 */
export function withHealing(path: TreatmentPath, rounds: number): TreatmentPath {
  if (rounds === 0) return path;
  const impressionAt = path.visits.findIndex((each) => NEEDS_HEALTHY_MUCOSA.includes(each.milestone));
  const impression = path.visits[impressionAt];
  if (impression === undefined)
    throw new UnknownPartError(
      'stage',
      'final impression',
      path.visits.map((each) => each.code),
    );
  const healing = Array.from({ length: rounds }, (_, index) => healingVisit(index + 1));
  const chain = [...healing, impression];
  const lags: PathLag[] = healing.map((each, index) =>
    lag(
      `conditioner-${String(index + 1)}`,
      'Conditioner worn, then changed',
      [each.code, chain[index + 1]?.code ?? ''],
      {
        min: typical(3, 'calendar-days', 'conditioner worn 3–4 days before an impression'),
        max: typical(7, 'calendar-days'),
      },
    ),
  );
  return {
    ...path,
    visits: [...path.visits.slice(0, impressionAt), ...healing, ...path.visits.slice(impressionAt)],
    lags: [...path.lags, ...lags],
  };
}
