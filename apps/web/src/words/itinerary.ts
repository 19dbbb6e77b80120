import { count } from './plural.js';

/** Words of the sheet that a patient takes home. */
export const itineraryWords = {
  title: (patient: string) => `Visits of ${patient}`,
  sentence: (n: number, number: string) => `${count(n, 'visit', 'visits')} to come, case ${number}.`,
  loading: 'the visits',
  back: 'Back to the case',
  print: 'Print',
  calendar: 'Calendar file',
  send: { mail: 'Mail it again', call: 'Put on the call list' },
  sent: { mail: 'The mail goes out within seconds.', call: 'It stands on the call list.' },
  none: 'No visit to come. Plan the case, and its visits appear here.',
  provisional: 'not firm yet',
  columns: { when: 'When', what: 'What for', where: 'Where' },
};
