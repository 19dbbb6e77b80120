import { ScoringError } from '../errors.js';

/** Variants differ in their grades and are never mixed or compared. */
export const KAPUR_VARIANTS = ['kapur-1967', 'kapur-olshan', 'modified'] as const;
export type KapurVariant = (typeof KAPUR_VARIANTS)[number];

/** Grades of one denture: retention 0 to 3, stability 0 to 2. */
export interface KapurGrades {
  readonly retention: number;
  readonly stability: number;
}

export interface KapurScore {
  readonly variant: KapurVariant;
  readonly upper: number;
  readonly lower: number;
  /** 0 to 10. */
  readonly total: number;
  /** Total above 6, in the variant that has this cut-off (from memory); null in the others. */
  readonly isAcceptable: boolean | null;
}

function sumOf(denture: string, grades: KapurGrades): number {
  for (const [name, grade, max] of [
    ['retention', grades.retention, 3],
    ['stability', grades.stability, 2],
  ] as const) {
    if (!Number.isInteger(grade) || grade < 0 || grade > max) {
      throw new ScoringError(
        'kapur-grade',
        `${denture} ${name} ${String(grade)} is no grade. Accepted: whole numbers 0 to ${String(max)}.`,
        { denture, name, grade },
      );
    }
  }
  return grades.retention + grades.stability;
}

/**
 * Retention and stability of a pair of dentures.
 *
 * @throws {ScoringError} `measures.kapur-grade` for a grade that the index does not have
 * @see Kapur 1967; cut-off of the Olshan variant; both from memory
 */
export function kapurScore(
  variant: KapurVariant,
  grades: { readonly upper: KapurGrades; readonly lower: KapurGrades },
): KapurScore {
  if (variant === 'modified') {
    throw new ScoringError(
      'kapur-variant',
      'A modified index has its own grades: enter its grades as the practice defines them, no sum is computed.',
      { variant },
    );
  }
  const upper = sumOf('Upper', grades.upper);
  const lower = sumOf('Lower', grades.lower);
  const total = upper + lower;
  return { variant, upper, lower, total, isAcceptable: variant === 'kapur-olshan' ? total > 6 : null };
}
