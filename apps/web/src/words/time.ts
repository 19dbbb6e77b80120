import { messages as english } from './en/time.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/time.js'), ar: () => import('./ar/time.js') });

/** Lengths of time and the order of a date's parts; the date itself is written by the browser. */
export const timeWords = {
  dateAndTime: filled(said.time.dateAndTime, (date: string, time: string) => ({ date, time })),
  zone: filled(said.time.zone, (city: string) => ({ city })),
  hoursAndMinutes: filled(said.time.hoursAndMinutes, (hours: number, minutes: string) => ({ hours, minutes })),
  minutes: filled(said.time.minutes, (n: number) => ({ n })),
  hours: filled(said.time.hours, (n: number) => ({ n })),
  days: filled(said.time.days, (n: number) => ({ n })),
};
