export const messages = {
  dates: {
    shape: 'd/m/yyyy',
    wrong: 'Not a date of the calendar. Write day, month and year as 28/1/2027, 28 January 2027 or 2027-01-28.',
    calendar: 'Calendar',
    previousMonth: 'Month before',
    nextMonth: 'Month after',
    previousYear: 'Year before',
    nextYear: 'Year after',
    previousDecade: 'Ten years before',
    nextDecade: 'Ten years after',
    toYear: 'All months of the year',
    toDecade: 'All years of the decade',
  },
};
