import type { messages as english } from '../en/dates.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  dates: {
    shape: 'T.M.JJJJ',
    wrong:
      'Kein Datum des Kalenders. Schreiben Sie Tag, Monat und Jahr als 28.1.2027, 28. Januar 2027 oder 2027-01-28.',
    calendar: 'Kalender',
    previousMonth: 'Monat davor',
    nextMonth: 'Monat danach',
    previousYear: 'Jahr davor',
    nextYear: 'Jahr danach',
    previousDecade: 'Zehn Jahre davor',
    nextDecade: 'Zehn Jahre danach',
    toYear: 'Alle Monate des Jahres',
    toDecade: 'Alle Jahre des Jahrzehnts',
  },
};
