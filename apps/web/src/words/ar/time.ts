import type { messages as english } from '../en/time.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  time: {
    dateAndTime: '{date}، {time}',
    zone: 'بتوقيت {city}',
    hoursAndMinutes: '{hours} س {minutes} د',
    minutes: '{n} د',
    hours: '{n, number} س',
    days: '{n, plural, zero {# يوم} one {يوم واحد} two {يومان} few {# أيام} many {# يومًا} other {# يوم}}',
  },
};
