import type { ComparedValue, TooFewOthers, ValueOutcome } from '@archwright/screening';
import type { Compared, ValueGroup } from './comparisons.js';
import { amount, numberMeasurement, subjectInWords, type Subject } from './subject.js';

const WHO: Readonly<Record<ValueGroup, string>> = {
  'own-change': 'changes from one visit to the next of other patients',
  clinic: 'last values of other patients of this clinic',
  organisation: 'last values of other patients of all clinics',
};

/** What stands out, beside how large a group, and which groups were too small to tell. */
export function valueInSentence(
  subject: Subject,
  { mine, before }: Pick<Compared, 'mine' | 'before'>,
  found: ComparedValue<ValueGroup>,
  outcomes: readonly ValueOutcome<ValueGroup>[],
): string {
  const { unit } = numberMeasurement(subject.code);
  const value = amount(mine.value, unit);
  const change =
    found.group === 'own-change' && before !== null
      ? `, ${amount(Math.abs(found.value), unit)} ${found.value > 0 ? 'more' : 'less'} than at the visit before`
      : '';
  const middle = `lie about ${amount(found.median, unit)}, usual spread ${amount(found.spread, unit)}`;
  const small = outcomes.filter((outcome): outcome is TooFewOthers<ValueGroup> => outcome.outcome === 'too-few');
  return [
    `${subjectInWords(subject)} ${value}${change}: ${String(found.size)} ${WHO[found.group]} ${middle}.`,
    ...small.map(
      ({ group, size, needed }) => `Too few ${WHO[group]} to compare: ${String(size)} of ${String(needed)}.`,
    ),
  ].join(' ');
}
