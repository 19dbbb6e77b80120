import type { Reading } from '../readings/reading.js';
import { requireSameMethod } from '../readings/summary.js';
import { IMPACT_ITEMS } from './impact-forms.js';
import { impactForm, scoreImpact, type ImpactScore } from './oral-health-impact.js';

/** Measurement under which the answers are recorded, one for each question. */
export const IMPACT_ANSWER = 'oral-health-impact-answer';

/**
 * The score of the answers that were recorded. Of a question that was answered twice the last answer counts.
 *
 * @returns null when none were
 * @throws {ScoringError} as {@link scoreImpact}; {@link DifferentMethodError} for answers of two forms
 */
export function impactOf(readings: readonly Reading[]): ImpactScore | null {
  const answers = readings.filter(({ code }) => code === IMPACT_ANSWER);
  const [first] = answers;
  if (first === undefined) return null;
  for (const answer of answers) {
    requireSameMethod('Answers of two forms', first.method ?? {}, answer.method ?? {}, ['form']);
  }
  const form = impactForm(first.method?.form ?? '');
  const given = IMPACT_ITEMS.map((item) => answers.findLast(({ region }) => region === item)?.value);
  const beyond = given.slice(form.items).some((answer) => answer !== undefined);
  // A question that the form does not have is an answer too many.
  const asked = beyond ? given : given.slice(0, form.items);
  return scoreImpact(
    form.code,
    asked.map((answer) => (answer === undefined ? null : Number(answer))),
  );
}
