import { count } from './plural.js';

/** Words of time that has become free, and of whom it helps. */
export const freedWords = {
  title: 'Freed time',
  sentence: 'Time of one clinician that has become free. The case that gains most by taking it stands first.',
  clinic: 'Clinic',
  clinician: 'Clinician',
  choose: 'Choose',
  day: 'Day',
  from: 'From',
  to: 'To',
  ask: 'Who gains most?',
  loading: 'who gains; each case is planned anew for it, which can take some seconds',
  incomplete:
    'Choose clinic and clinician, and enter a day with a time from and a later one to, such as 09:00 and 09:45.',
  start:
    'Whoever gains by the time will stand here, the one who gains most first. After a visit was moved or cancelled, its case shows the time that it left.',
  none: 'Nobody gains by this time: no visit to come fits into it by its length, its clinician and the work it waits for.',
  looked: (looked: number, left: number) =>
    left === 0
      ? `${count(looked, 'case was', 'cases were')} looked at.`
      : `${count(looked, 'case was', 'cases were')} looked at; ${String(left)} whose next visit is nearer were left out.`,
  move: (before: string, after: string) => `now ${before}, then ${after}`,
  placement: (before: string, after: string) => `placement ${before}, then ${after}`,
  preview: 'Show what would change',
  previewOf: (patient: string) => `Show what would change for ${patient}`,
  hide: 'Not this one',
  apply: 'They agreed: change it',
  done: (number: string) => `Changed. The time is taken by case ${number}.`,
  calls: 'Calls to make',
  timeOf: (day: string, from: string, to: string) => `${day}, ${from} to ${to}`,
  freed: (when: string) => `${when} has become free.`,
  see: 'See who gains most by it',
};
