import { messages as english } from './en/course.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/course.js'), ar: () => import('./ar/course.js') });
const { course } = said;

const counted = (n: number) => ({ n });

/** Words of the course of a case. */
export const courseWords = {
  ...course,
  title: filled(course.title, (number: string, patient: string) => ({ number, patient })),
  whenAndState: filled(course.whenAndState, (when: string, state: string) => ({ when, state })),
  later: filled(course.later, counted),
  earlier: filled(course.earlier, counted),
  column: filled(course.column, (day: string, title: string) => ({ day, title })),
  nameOf: filled(course.nameOf, (name: string, place: string) => ({ name, place })),
  amount: filled(course.amount, (value: number, unit: string) => ({ value, unit })),
};
