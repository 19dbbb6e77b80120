export const messages = {
  time: {
    dateAndTime: '{date}, {time}',
    zone: '{city} time',
    hoursAndMinutes: '{hours} h {minutes} min',
    minutes: '{n} min',
    hours: '{n, number} h',
    days: '{n, plural, one {# day} other {# days}}',
  },
};
