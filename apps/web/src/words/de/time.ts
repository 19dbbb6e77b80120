import type { messages as english } from '../en/time.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  time: {
    dateAndTime: '{date}, {time}',
    zone: 'Zeit in {city}',
    hoursAndMinutes: '{hours} Std. {minutes} min',
    minutes: '{n} min',
    hours: '{n, number} Std.',
    days: '{n, plural, one {# Tag} other {# Tage}}',
  },
};
