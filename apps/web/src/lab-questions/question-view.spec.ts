import type { LabQuestionView } from '@archwright/contracts';
import { openQuestions, questionLines } from './question-view.js';

const asked: LabQuestionView = {
  id: 'q',
  question: 'Which shade?',
  askedAt: '2027-01-05T09:00:00Z',
  askedBy: 'Sam Bench-Example',
  escalatesAt: '2027-01-06T09:00:00Z',
  answer: null,
  answeredAt: null,
  answeredBy: null,
};

it('says who asked when, that the clock stands still, and from when the front desk is told', () => {
  expect(questionLines(asked, 'Europe/London', '2027-01-05')).toEqual({
    isOpen: true,
    asked: 'Asked by Sam Bench-Example, Tue 5 Jan, 09:00',
    question: 'Which shade?',
    then: 'The clock of this step stands still until the clinic answers; from Wed 6 Jan, 09:00 its front desk is told too.',
    answer: null,
  });
});

it('shows the answer with its author once it is there', () => {
  const answered = { ...asked, answer: 'A2.', answeredAt: '2027-01-05T10:00:00Z', answeredBy: 'Dr Example' };
  expect(questionLines(answered, 'Europe/London', '2027-01-05')).toMatchObject({
    isOpen: false,
    then: 'Answered by Dr Example, Tue 5 Jan, 10:00',
    answer: 'A2.',
  });
});

it('marks as overdue what has waited past its time, to the instant', () => {
  const item = {
    ...asked,
    caseId: 'c',
    caseNumber: '27-0001',
    patientName: 'Alma Example',
    birthOn: '1949-03-04',
    step: 'Set-up',
    arches: ['upper' as const],
    laboratoryName: 'Lantern',
    zone: 'Europe/London',
  };
  const at = (instant: string) => openQuestions({ items: [item] }, Date.parse(instant), '2027-01-05')[0];
  expect(at('2027-01-06T08:59:59Z')?.isOverdue).toBe(false);
  expect(at('2027-01-06T09:00:00Z')).toMatchObject({ isOverdue: true, patient: 'Alma Example, 4 Mar 1949' });
});
