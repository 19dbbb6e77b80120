import { evaluateStage } from '../checks/evaluate-stage.js';
import type { Reading } from '../readings/reading.js';
import { derivedValues } from '../vertical/derived-values.js';
import { impactOf } from './impact-answers.js';

const answer = (question: number, value: number, form = 'ohip-edent-19'): Reading => ({
  code: 'oral-health-impact-answer',
  value,
  region: `question-${String(question)}`,
  method: { form },
});
const answers = (count: number, value: number, form?: string) =>
  Array.from({ length: count }, (_, index) => answer(index + 1, value, form));
const judged = (readings: readonly Reading[]) =>
  evaluateStage({ readings, facts: { milestones: ['review'], arches: ['upper', 'lower'] } }).find(
    ({ rule }) => rule === 'oral-health-impact',
  );

describe('answers of the oral health questionnaire', () => {
  // Sums of 19 answers from 0 to 4.
  it.each([
    [0, 0],
    [2, 38],
    [4, 76],
  ])('all %p are scored %p', (value, total) => {
    expect(impactOf(answers(19, value))).toMatchObject({ total, form: 'ohip-edent-19', version: '2002' });
    expect(derivedValues(answers(19, value))).toMatchObject([{ code: 'oral-health-impact', value: total }]);
    expect(judged(answers(19, value))).toMatchObject({ verdict: 'pass', value: total });
  });

  it('are scored with two missing and not with three', () => {
    const without = (...questions: number[]) =>
      answers(19, 2).filter(({ region }) => !questions.some((question) => region === `question-${String(question)}`));
    expect(judged(without(3, 19))).toMatchObject({ verdict: 'pass', value: 38 });
    expect(judged(without(3, 17, 19))).toMatchObject({ verdict: 'caution', action: 'repeat' });
    expect(judged(without(3, 17, 19))?.reason).toContain('3, 17, 19');
    // Nothing of the domain is left to fill in from.
    expect(judged(without(18, 19))?.verdict).toBe('caution');
  });

  it('are refused a score off the scale of their form, for a question too many, and of two forms', () => {
    expect(judged([...answers(18, 2), answer(19, 5)])?.reason).toContain('0 to 4');
    expect(judged(answers(20, 2))?.reason).toContain('19 items');
    expect(judged([...answers(18, 2), answer(19, 2, 'ohip-edent-19-three-point')])?.verdict).toBe('caution');
    expect(judged(answers(20, 3, 'ohip-edent-20'))).toMatchObject({ verdict: 'pass', value: 60 });
  });

  it('count as they were given last', () => {
    expect(impactOf([...answers(19, 2), answer(3, 4)])?.total).toBe(40);
    expect(impactOf([answer(3, 4), ...answers(19, 2)])?.total).toBe(38);
  });

  it('of another form are no value of the 19-item form', () => {
    expect(derivedValues(answers(20, 3, 'ohip-edent-20'))).toEqual([]);
    expect(derivedValues(answers(19, 1, 'ohip-edent-19-three-point'))).toEqual([]);
  });
});
