import type { messages as english } from '../en/dates.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  dates: {
    shape: 'يوم/شهر/سنة',
    wrong: 'هذا ليس تاريخًا في التقويم. اكتب اليوم والشهر والسنة هكذا: 28/1/2027 أو 28 يناير 2027 أو 2027-01-28.',
    calendar: 'التقويم',
    previousMonth: 'الشهر السابق',
    nextMonth: 'الشهر التالي',
    previousYear: 'السنة السابقة',
    nextYear: 'السنة التالية',
    previousDecade: 'السنوات العشر السابقة',
    nextDecade: 'السنوات العشر التالية',
    toYear: 'كل أشهر السنة',
    toDecade: 'كل سنوات العقد',
  },
};
