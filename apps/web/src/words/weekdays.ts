import { locale } from './language.js';

/** 1 January 2024 was a Monday. */
function names(weekday: 'long' | 'short'): string[] {
  const format = new Intl.DateTimeFormat(locale, { weekday, timeZone: 'UTC' });
  return [1, 2, 3, 4, 5, 6, 7].map((day) => format.format(Date.UTC(2024, 0, day)));
}

/** Names of the weekdays as the browser writes them, Monday first. */
export const weekdayWords = { long: names('long'), short: names('short') };
