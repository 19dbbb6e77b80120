import type { Arch } from '../measurement.js';
import { requireSameMethod, type ReadingSummary } from '../readings/summary.js';
import { kapurScore, type KapurScore, type KapurVariant } from './kapur.js';

type SummaryOf = (code: string, where: { readonly arch: Arch }) => ReadingSummary | null;

/**
 * The score of the grades that were recorded of both dentures.
 *
 * @returns null while one of the four is missing, and for a modified index, which has no sum
 * @throws {DifferentMethodError} for grades of two variants; {@link ScoringError} for repeated readings whose middle is no
 * grade
 */
export function kapurOf(summaryOf: SummaryOf): KapurScore | null {
  const gradesOf = (arch: Arch) => ({
    retention: summaryOf('kapur-retention', { arch }),
    stability: summaryOf('kapur-stability', { arch }),
  });
  const [upper, lower] = [gradesOf('upper'), gradesOf('lower')];
  if (!isWhole(upper) || !isWhole(lower)) return null;
  const { method } = upper.retention;
  for (const grade of [upper.stability, lower.retention, lower.stability])
    requireSameMethod('Grades of two variants of the index', method, grade.method, ['variant']);
  // The catalogue asks for one of the variants with every grade.
  const variant = method.variant as KapurVariant;
  return variant === 'modified' ? null : kapurScore(variant, { upper: mediansOf(upper), lower: mediansOf(lower) });
}

type Graded = Record<'retention' | 'stability', ReadingSummary>;

const isWhole = (grades: Record<keyof Graded, ReadingSummary | null>): grades is Graded =>
  grades.retention !== null && grades.stability !== null;

const mediansOf = ({ retention, stability }: Graded) => ({ retention: retention.median, stability: stability.median });
